-- Why: mails in the language of their reader, and beside the text the same as a page.
-- Locks: ACCESS EXCLUSIVE on mails and people for an instant, on people for a scan. Written for Postgres 15.
-- Undo: drop the two columns.
ALTER TABLE "mails" ADD COLUMN "html" text;--> statement-breakpoint
ALTER TABLE "people" ADD COLUMN "language" text;--> statement-breakpoint
ALTER TABLE "people" ADD CONSTRAINT "people_language_known" CHECK ("people"."language" in ('en', 'es'));