-- Why: holds that lapse, orders that the plan assures, a queue, rules of a shop for its customers, links and mail.
-- Locks: ACCESS EXCLUSIVE on orders, people, days and sessions for the length of a scan of orders. Written for Postgres 15.
-- Undo: drop the tables, columns and constraints; orders may then be standing or cancelled only.
CREATE TABLE "mails" (
	"shop_id" uuid NOT NULL,
	"mail_id" uuid NOT NULL,
	"kind" text NOT NULL,
	"order_id" uuid,
	"to_email" text NOT NULL,
	"subject" text NOT NULL,
	"body" text NOT NULL,
	"made_at" timestamp with time zone DEFAULT now() NOT NULL,
	"tries" integer DEFAULT 0 NOT NULL,
	"try_at" timestamp with time zone,
	"sent_at" timestamp with time zone,
	"fault" text,
	CONSTRAINT "mails_one_per_id" PRIMARY KEY("shop_id","mail_id"),
	CONSTRAINT "mails_kind_shape" CHECK ("mails"."kind" ~ '^[a-z]+([.-][a-z]+)*$'),
	CONSTRAINT "mails_to_email_shape" CHECK (length("mails"."to_email") <= 254 and "mails"."to_email" ~ '^[^@[:space:]]+@[^@[:space:]]+$'),
	CONSTRAINT "mails_subject_one_line" CHECK ("mails"."subject" ~ '^[^[:cntrl:]]{1,200}$'),
	CONSTRAINT "mails_tries_not_negative" CHECK ("mails"."tries" >= 0),
	CONSTRAINT "mails_sent_once" CHECK ("mails"."sent_at" is null or "mails"."try_at" is null)
);
--> statement-breakpoint
CREATE TABLE "shop_rules" (
	"shop_id" uuid NOT NULL,
	"hold_seconds" integer NOT NULL,
	"promoted_hold_seconds" integer NOT NULL,
	"deposit_percent" integer NOT NULL,
	"deposit_from_minor" integer NOT NULL,
	"orders_per_person" integer NOT NULL,
	"pieces_per_person" integer NOT NULL,
	"shares_per_person" integer NOT NULL,
	CONSTRAINT "shop_rules_one_per_shop" PRIMARY KEY("shop_id"),
	CONSTRAINT "shop_rules_hold_within" CHECK ("shop_rules"."hold_seconds" between 1 and 604800),
	CONSTRAINT "shop_rules_promoted_hold_within" CHECK ("shop_rules"."promoted_hold_seconds" between 1 and 604800),
	CONSTRAINT "shop_rules_deposit_within" CHECK ("shop_rules"."deposit_percent" between 0 and 100),
	CONSTRAINT "shop_rules_deposit_from_not_negative" CHECK ("shop_rules"."deposit_from_minor" >= 0),
	CONSTRAINT "shop_rules_orders_within" CHECK ("shop_rules"."orders_per_person" between 1 and 1000),
	CONSTRAINT "shop_rules_pieces_within" CHECK ("shop_rules"."pieces_per_person" between 1 and 100000),
	CONSTRAINT "shop_rules_shares_within" CHECK ("shop_rules"."shares_per_person" between 0 and 1000)
);
--> statement-breakpoint
CREATE TABLE "sign_in_links" (
	"shop_id" uuid NOT NULL,
	"link_id" uuid NOT NULL,
	"token_hash" text NOT NULL,
	"person_id" uuid NOT NULL,
	"order_id" uuid,
	"made_at" timestamp with time zone DEFAULT now() NOT NULL,
	"expires_at" timestamp with time zone NOT NULL,
	"revoked_at" timestamp with time zone,
	CONSTRAINT "sign_in_links_one_per_id" PRIMARY KEY("shop_id","link_id"),
	CONSTRAINT "sign_in_links_one_per_token" UNIQUE("shop_id","token_hash"),
	CONSTRAINT "sign_in_links_token_hashed" CHECK ("sign_in_links"."token_hash" ~ '^[0-9a-f]{64}$'),
	CONSTRAINT "sign_in_links_expiry_finite" CHECK (isfinite("sign_in_links"."expires_at"))
);
--> statement-breakpoint
ALTER TABLE "orders" DROP CONSTRAINT "orders_state_known";--> statement-breakpoint
ALTER TABLE "people" ALTER COLUMN "password_hash" DROP NOT NULL;--> statement-breakpoint
ALTER TABLE "cutting_days" ADD COLUMN "customers_until" timestamp with time zone;--> statement-breakpoint
ALTER TABLE "orders" ADD COLUMN "assured" boolean DEFAULT false NOT NULL;--> statement-breakpoint
ALTER TABLE "orders" ADD COLUMN "held_until" timestamp with time zone;--> statement-breakpoint
ALTER TABLE "orders" ADD COLUMN "deposit_minor" integer DEFAULT 0 NOT NULL;--> statement-breakpoint
ALTER TABLE "sessions" ADD COLUMN "link_id" uuid;--> statement-breakpoint
ALTER TABLE "mails" ADD CONSTRAINT "mails_order_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."orders"("shop_id","order_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "mails" ADD CONSTRAINT "mails_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "shop_rules" ADD CONSTRAINT "shop_rules_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sign_in_links" ADD CONSTRAINT "sign_in_links_person_known" FOREIGN KEY ("shop_id","person_id") REFERENCES "public"."people"("shop_id","person_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sign_in_links" ADD CONSTRAINT "sign_in_links_order_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."orders"("shop_id","order_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "mails_to_send" ON "mails" USING btree ("shop_id","try_at") WHERE "mails"."try_at" is not null;--> statement-breakpoint
CREATE INDEX "orders_by_hold" ON "orders" USING btree ("shop_id","held_until") WHERE "orders"."held_until" is not null;--> statement-breakpoint
CREATE INDEX "orders_of_person" ON "orders" USING btree ("shop_id","person_id");--> statement-breakpoint
ALTER TABLE "cutting_days" ADD CONSTRAINT "cutting_days_customers_until_finite" CHECK (isfinite("cutting_days"."customers_until"));--> statement-breakpoint
ALTER TABLE "orders" ADD CONSTRAINT "orders_held_until_set" CHECK (("orders"."state" = 'held') = ("orders"."held_until" is not null));--> statement-breakpoint
ALTER TABLE "orders" ADD CONSTRAINT "orders_held_until_finite" CHECK (isfinite("orders"."held_until"));--> statement-breakpoint
ALTER TABLE "orders" ADD CONSTRAINT "orders_assured_while_kept" CHECK (case "orders"."state" when 'held' then "orders"."assured" when 'standing' then true else not "orders"."assured" end);--> statement-breakpoint
ALTER TABLE "orders" ADD CONSTRAINT "orders_deposit_not_negative" CHECK ("orders"."deposit_minor" >= 0);--> statement-breakpoint
ALTER TABLE "orders" ADD CONSTRAINT "orders_state_known" CHECK ("orders"."state" in ('queued', 'held', 'standing', 'lapsed', 'released', 'cancelled'));--> statement-breakpoint
SELECT "wall_by_shop"('mails'), "wall_by_shop"('shop_rules'), "wall_by_shop"('sign_in_links');
