-- Why: two walls that the schema language cannot say. Pieces of a bar never overlap; ledger and audit are only appended to.
-- Locks: new tables only, nothing waits. Written for Postgres 15.
-- Undo: drop the constraint, the triggers and the function; grant UPDATE, DELETE, TRUNCATE on ledger and audit again.
CREATE EXTENSION IF NOT EXISTS btree_gist;
--> statement-breakpoint
-- Deferrable, so that one transaction may move pieces about and is judged by where they end.
ALTER TABLE "plan_pieces" ADD CONSTRAINT "plan_pieces_no_overlap"
  EXCLUDE USING gist ("shop_id" WITH =, "plan_id" WITH =, "side_id" WITH =, "bar" WITH =, "span" WITH &&)
  DEFERRABLE INITIALLY IMMEDIATE;
--> statement-breakpoint
CREATE FUNCTION "refuse_change"() RETURNS trigger LANGUAGE plpgsql AS $$
BEGIN
  RAISE EXCEPTION '% is only appended to', TG_TABLE_NAME
    USING ERRCODE = 'restrict_violation', TABLE = TG_TABLE_NAME, CONSTRAINT = TG_TABLE_NAME || '_append_only';
END
$$;
--> statement-breakpoint
CREATE TRIGGER "ledger_append_only" BEFORE UPDATE OR DELETE OR TRUNCATE ON "ledger"
  FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
--> statement-breakpoint
CREATE TRIGGER "audit_append_only" BEFORE UPDATE OR DELETE OR TRUNCATE ON "audit"
  FOR EACH STATEMENT EXECUTE FUNCTION "refuse_change"();
--> statement-breakpoint
-- The account that migrates is usually the one that serves; it gives up the right as well.
REVOKE UPDATE, DELETE, TRUNCATE ON "ledger", "audit" FROM CURRENT_USER, PUBLIC;
