-- Why: the first tables. Locks: nothing is there yet. Undo: drop the tables.
CREATE TABLE "animals" (
	"shop_id" uuid NOT NULL,
	"animal_id" uuid NOT NULL,
	"day_id" uuid NOT NULL,
	"farm_id" uuid,
	"name" text NOT NULL,
	"species_id" text NOT NULL,
	"ribs" integer NOT NULL,
	"hanging_text" text NOT NULL,
	"hanging_unit" text NOT NULL,
	"hanging_grams" integer NOT NULL,
	"hot_or_cold" text NOT NULL,
	"facts" text[] NOT NULL,
	"lost_items" text[] NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	"booked_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "animals_one_per_id" PRIMARY KEY("shop_id","animal_id"),
	CONSTRAINT "animals_name_present" CHECK (length(trim("animals"."name")) between 1 and 200),
	CONSTRAINT "animals_ribs_within" CHECK ("animals"."ribs" between 1 and 30),
	CONSTRAINT "animals_hanging_read" CHECK ("animals"."hanging_text" ~ '^[0-9]{1,7}(\.[0-9]{1,6})?$'),
	CONSTRAINT "animals_hanging_unit_known" CHECK ("animals"."hanging_unit" in ('kg', 'g', 'lb', 'oz')),
	CONSTRAINT "animals_hanging_within" CHECK ("animals"."hanging_grams" between 1 and 2000000),
	CONSTRAINT "animals_hot_or_cold" CHECK ("animals"."hot_or_cold" in ('hot', 'cold')),
	CONSTRAINT "animals_facts_known" CHECK ("animals"."facts" <@ array['skin-on', 'head', 'feet', 'organs', 'unsplit']::text[]),
	CONSTRAINT "animals_version_counts" CHECK ("animals"."version" >= 1)
);
--> statement-breakpoint
CREATE TABLE "carcass_shares" (
	"shop_id" uuid NOT NULL,
	"share_id" uuid NOT NULL,
	"order_id" uuid NOT NULL,
	"place" integer NOT NULL,
	"species_id" text NOT NULL,
	"size" text NOT NULL,
	"rank" text NOT NULL,
	"price_minor_per_kg" integer NOT NULL,
	"only_animal" uuid,
	"instructions" jsonb NOT NULL,
	CONSTRAINT "carcass_shares_one_per_id" PRIMARY KEY("shop_id","share_id"),
	CONSTRAINT "carcass_shares_one_per_place" UNIQUE("shop_id","order_id","place"),
	CONSTRAINT "carcass_shares_place_counts" CHECK ("carcass_shares"."place" >= 0),
	CONSTRAINT "carcass_shares_size_known" CHECK ("carcass_shares"."size" in ('half', 'whole')),
	CONSTRAINT "carcass_shares_rank_known" CHECK ("carcass_shares"."rank" in ('promised', 'wished')),
	CONSTRAINT "carcass_shares_price_not_negative" CHECK ("carcass_shares"."price_minor_per_kg" >= 0),
	CONSTRAINT "carcass_shares_instructions_shape" CHECK (jsonb_typeof("carcass_shares"."instructions") = 'object')
);
--> statement-breakpoint
CREATE TABLE "cutting_days" (
	"shop_id" uuid NOT NULL,
	"day_id" uuid NOT NULL,
	"date" date NOT NULL,
	"state" text DEFAULT 'open' NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	"planned_version" integer,
	"tools" jsonb NOT NULL,
	"counter" jsonb NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "cutting_days_one_per_id" PRIMARY KEY("shop_id","day_id"),
	CONSTRAINT "cutting_days_one_per_date" UNIQUE("shop_id","date"),
	CONSTRAINT "cutting_days_date_finite" CHECK ("cutting_days"."date" between date '2000-01-01' and date '2199-12-31'),
	CONSTRAINT "cutting_days_state_known" CHECK ("cutting_days"."state" in ('open', 'closed')),
	CONSTRAINT "cutting_days_version_counts" CHECK ("cutting_days"."version" >= 1),
	CONSTRAINT "cutting_days_planned_not_ahead" CHECK ("cutting_days"."planned_version" between 1 and "cutting_days"."version")
);
--> statement-breakpoint
CREATE TABLE "locks" (
	"shop_id" uuid NOT NULL,
	"day_id" uuid NOT NULL,
	"place" integer NOT NULL,
	"side_id" uuid NOT NULL,
	"kind" text NOT NULL,
	"target" text NOT NULL,
	"choice" text NOT NULL,
	CONSTRAINT "locks_one_per_place" PRIMARY KEY("shop_id","day_id","place"),
	CONSTRAINT "locks_one_per_choice" UNIQUE("shop_id","side_id","kind","target","choice"),
	CONSTRAINT "locks_place_counts" CHECK ("locks"."place" >= 0),
	CONSTRAINT "locks_kind_known" CHECK ("locks"."kind" in ('operation', 'manner'))
);
--> statement-breakpoint
CREATE TABLE "order_lines" (
	"shop_id" uuid NOT NULL,
	"line_id" uuid NOT NULL,
	"order_id" uuid NOT NULL,
	"place" integer NOT NULL,
	"species_id" text NOT NULL,
	"cut" text NOT NULL,
	"portion" jsonb NOT NULL,
	"ask_pieces" integer,
	"ask_grams" integer,
	"rank" text NOT NULL,
	"price_minor_per_kg" integer NOT NULL,
	"same_animal" boolean NOT NULL,
	"only_animal" uuid,
	"only_hand" text,
	"substitutes" jsonb NOT NULL,
	CONSTRAINT "order_lines_one_per_id" PRIMARY KEY("shop_id","line_id"),
	CONSTRAINT "order_lines_one_per_place" UNIQUE("shop_id","order_id","place"),
	CONSTRAINT "order_lines_place_counts" CHECK ("order_lines"."place" >= 0),
	CONSTRAINT "order_lines_ask_one" CHECK (num_nonnulls("order_lines"."ask_pieces", "order_lines"."ask_grams") = 1),
	CONSTRAINT "order_lines_pieces_within" CHECK ("order_lines"."ask_pieces" between 1 and 100000),
	CONSTRAINT "order_lines_grams_within" CHECK ("order_lines"."ask_grams" between 1 and 10000000),
	CONSTRAINT "order_lines_rank_known" CHECK ("order_lines"."rank" in ('promised', 'wished')),
	CONSTRAINT "order_lines_price_not_negative" CHECK ("order_lines"."price_minor_per_kg" >= 0),
	CONSTRAINT "order_lines_hand_known" CHECK ("order_lines"."only_hand" in ('left', 'right')),
	CONSTRAINT "order_lines_portion_shape" CHECK (jsonb_typeof("order_lines"."portion") = 'object'),
	CONSTRAINT "order_lines_substitutes_shape" CHECK (jsonb_typeof("order_lines"."substitutes") = 'array')
);
--> statement-breakpoint
CREATE TABLE "orders" (
	"shop_id" uuid NOT NULL,
	"order_id" uuid NOT NULL,
	"day_id" uuid NOT NULL,
	"number" integer NOT NULL,
	"owner" text NOT NULL,
	"person_id" uuid,
	"note" text NOT NULL,
	"state" text DEFAULT 'standing' NOT NULL,
	"version" integer DEFAULT 1 NOT NULL,
	"placed_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "orders_one_per_id" PRIMARY KEY("shop_id","order_id"),
	CONSTRAINT "orders_one_per_number" UNIQUE("shop_id","number"),
	CONSTRAINT "orders_number_counts" CHECK ("orders"."number" >= 1),
	CONSTRAINT "orders_owner_present" CHECK (length(trim("orders"."owner")) between 1 and 200),
	CONSTRAINT "orders_note_length" CHECK (length("orders"."note") <= 2000),
	CONSTRAINT "orders_state_known" CHECK ("orders"."state" in ('standing', 'cancelled')),
	CONSTRAINT "orders_version_counts" CHECK ("orders"."version" >= 1)
);
--> statement-breakpoint
CREATE TABLE "sides" (
	"shop_id" uuid NOT NULL,
	"side_id" uuid NOT NULL,
	"animal_id" uuid NOT NULL,
	"hand" text NOT NULL,
	"mass_mg" bigint NOT NULL,
	"weight_text" text,
	"weight_unit" text,
	"lost_parts" text[] NOT NULL,
	CONSTRAINT "sides_one_per_id" PRIMARY KEY("shop_id","side_id"),
	CONSTRAINT "sides_one_per_hand" UNIQUE("shop_id","animal_id","hand"),
	CONSTRAINT "sides_hand_known" CHECK ("sides"."hand" in ('left', 'right')),
	CONSTRAINT "sides_mass_within" CHECK ("sides"."mass_mg" between 1 and 2000000000),
	CONSTRAINT "sides_weight_read" CHECK (("sides"."weight_text" is null) = ("sides"."weight_unit" is null) and "sides"."weight_text" ~ '^[0-9]{1,7}(\.[0-9]{1,6})?$' and "sides"."weight_unit" in ('kg', 'g', 'lb', 'oz'))
);
--> statement-breakpoint
CREATE TABLE "plan_operations" (
	"shop_id" uuid NOT NULL,
	"plan_id" uuid NOT NULL,
	"side_id" uuid NOT NULL,
	"part" text NOT NULL,
	"operation" text NOT NULL,
	CONSTRAINT "plan_operations_one_per_part" PRIMARY KEY("shop_id","plan_id","side_id","part")
);
--> statement-breakpoint
CREATE TABLE "plan_pieces" (
	"shop_id" uuid NOT NULL,
	"plan_id" uuid NOT NULL,
	"piece_id" text NOT NULL,
	"kind" text NOT NULL,
	"side_id" uuid,
	"animal_id" uuid,
	"bar" text,
	"span" "int4range",
	"origin" text,
	"what" text NOT NULL,
	"mass_mg" bigint NOT NULL,
	"line_id" uuid,
	"share_id" uuid,
	CONSTRAINT "plan_pieces_one_line" PRIMARY KEY("shop_id","plan_id","piece_id"),
	CONSTRAINT "plan_pieces_one_owner" CHECK (num_nonnulls("plan_pieces"."line_id", "plan_pieces"."share_id") <= 1),
	CONSTRAINT "plan_pieces_mass_not_negative" CHECK ("plan_pieces"."mass_mg" >= 0),
	CONSTRAINT "plan_pieces_kind_shape" CHECK (case "plan_pieces"."kind"
        when 'span' then num_nonnulls("plan_pieces"."side_id", "plan_pieces"."bar", "plan_pieces"."span") = 3 and num_nonnulls("plan_pieces"."animal_id", "plan_pieces"."origin") = 0
        when 'item' then num_nonnulls("plan_pieces"."side_id", "plan_pieces"."origin") = 2 and num_nonnulls("plan_pieces"."animal_id", "plan_pieces"."bar", "plan_pieces"."span") = 0
        when 'single' then "plan_pieces"."animal_id" is not null and num_nonnulls("plan_pieces"."side_id", "plan_pieces"."bar", "plan_pieces"."span", "plan_pieces"."origin") = 0
        else false end),
	CONSTRAINT "plan_pieces_span_within" CHECK (not isempty("plan_pieces"."span") and not lower_inf("plan_pieces"."span") and not upper_inf("plan_pieces"."span") and lower("plan_pieces"."span") >= 0)
);
--> statement-breakpoint
CREATE TABLE "plan_sides" (
	"shop_id" uuid NOT NULL,
	"plan_id" uuid NOT NULL,
	"side_id" uuid NOT NULL,
	"share_id" uuid,
	"mass_mg" bigint NOT NULL,
	CONSTRAINT "plan_sides_one_share" PRIMARY KEY("shop_id","plan_id","side_id"),
	CONSTRAINT "plan_sides_mass_not_negative" CHECK ("plan_sides"."mass_mg" >= 0)
);
--> statement-breakpoint
CREATE TABLE "plans" (
	"shop_id" uuid NOT NULL,
	"plan_id" uuid NOT NULL,
	"day_id" uuid NOT NULL,
	"day_version" integer NOT NULL,
	"short_lines" integer NOT NULL,
	"proof" jsonb,
	"plan" jsonb NOT NULL,
	"made_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "plans_one_per_id" PRIMARY KEY("shop_id","plan_id"),
	CONSTRAINT "plans_one_per_day" UNIQUE("shop_id","day_id"),
	CONSTRAINT "plans_day_version_counts" CHECK ("plans"."day_version" >= 1),
	CONSTRAINT "plans_short_lines_not_negative" CHECK ("plans"."short_lines" >= 0)
);
--> statement-breakpoint
CREATE TABLE "audit" (
	"shop_id" uuid NOT NULL,
	"audit_id" uuid DEFAULT gen_random_uuid() NOT NULL,
	"at" timestamp with time zone DEFAULT now() NOT NULL,
	"person_id" uuid,
	"action" text NOT NULL,
	"subject" text NOT NULL,
	"facts" jsonb NOT NULL,
	CONSTRAINT "audit_one_per_id" PRIMARY KEY("shop_id","audit_id"),
	CONSTRAINT "audit_action_shape" CHECK ("audit"."action" ~ '^[a-z]+([.-][a-z]+)*$'),
	CONSTRAINT "audit_facts_shape" CHECK (jsonb_typeof("audit"."facts") = 'object')
);
--> statement-breakpoint
CREATE TABLE "idempotency_keys" (
	"shop_id" uuid NOT NULL,
	"principal" text NOT NULL,
	"route" text NOT NULL,
	"key" text NOT NULL,
	"fingerprint" text NOT NULL,
	"status" integer NOT NULL,
	"response" jsonb,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "idempotency_keys_once" PRIMARY KEY("shop_id","principal","route","key"),
	CONSTRAINT "idempotency_keys_key_length" CHECK (length("idempotency_keys"."key") between 1 and 255),
	CONSTRAINT "idempotency_keys_fingerprint_hashed" CHECK ("idempotency_keys"."fingerprint" ~ '^[0-9a-f]{64}$'),
	CONSTRAINT "idempotency_keys_status_known" CHECK ("idempotency_keys"."status" between 200 and 599)
);
--> statement-breakpoint
CREATE TABLE "ledger" (
	"shop_id" uuid NOT NULL,
	"seq" bigint NOT NULL,
	"at" timestamp with time zone DEFAULT now() NOT NULL,
	"kind" text NOT NULL,
	"day_id" uuid,
	"order_id" uuid,
	"person_id" uuid,
	"facts" jsonb NOT NULL,
	CONSTRAINT "ledger_one_per_seq" PRIMARY KEY("shop_id","seq"),
	CONSTRAINT "ledger_seq_counts" CHECK ("ledger"."seq" >= 1),
	CONSTRAINT "ledger_kind_shape" CHECK ("ledger"."kind" ~ '^[a-z]+([.-][a-z]+)*$'),
	CONSTRAINT "ledger_facts_shape" CHECK (jsonb_typeof("ledger"."facts") = 'object')
);
--> statement-breakpoint
CREATE TABLE "counters" (
	"shop_id" uuid NOT NULL,
	"counter" text NOT NULL,
	"last" bigint NOT NULL,
	CONSTRAINT "counters_one_per_kind" PRIMARY KEY("shop_id","counter"),
	CONSTRAINT "counters_kind_known" CHECK ("counters"."counter" in ('order', 'ledger')),
	CONSTRAINT "counters_not_negative" CHECK ("counters"."last" >= 0)
);
--> statement-breakpoint
CREATE TABLE "farms" (
	"shop_id" uuid NOT NULL,
	"farm_id" uuid NOT NULL,
	"name" text NOT NULL,
	CONSTRAINT "farms_one_per_id" PRIMARY KEY("shop_id","farm_id"),
	CONSTRAINT "farms_name_present" CHECK (length(trim("farms"."name")) between 1 and 200)
);
--> statement-breakpoint
CREATE TABLE "people" (
	"shop_id" uuid NOT NULL,
	"person_id" uuid NOT NULL,
	"email" text NOT NULL,
	"name" text NOT NULL,
	"role" text NOT NULL,
	"password_hash" text NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "people_one_per_id" PRIMARY KEY("shop_id","person_id"),
	CONSTRAINT "people_email_shape" CHECK (length("people"."email") <= 254 and "people"."email" ~ '^[^@[:space:]]+@[^@[:space:]]+$'),
	CONSTRAINT "people_name_present" CHECK (length(trim("people"."name")) between 1 and 200),
	CONSTRAINT "people_role_known" CHECK ("people"."role" in ('customer', 'counter', 'butcher', 'owner')),
	CONSTRAINT "people_password_hashed" CHECK ("people"."password_hash" like '$argon2id$%')
);
--> statement-breakpoint
CREATE TABLE "sessions" (
	"shop_id" uuid NOT NULL,
	"token_hash" text NOT NULL,
	"person_id" uuid NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	"expires_at" timestamp with time zone NOT NULL,
	CONSTRAINT "sessions_one_per_token" PRIMARY KEY("shop_id","token_hash"),
	CONSTRAINT "sessions_token_hashed" CHECK ("sessions"."token_hash" ~ '^[0-9a-f]{64}$'),
	CONSTRAINT "sessions_expiry_finite" CHECK (isfinite("sessions"."expires_at"))
);
--> statement-breakpoint
CREATE TABLE "shops" (
	"shop_id" uuid NOT NULL,
	"name" text NOT NULL,
	"currency" text NOT NULL,
	"time_zone" text NOT NULL,
	"weight_unit" text NOT NULL,
	"length_unit" text NOT NULL,
	"created_at" timestamp with time zone DEFAULT now() NOT NULL,
	CONSTRAINT "shops_one_per_id" PRIMARY KEY("shop_id"),
	CONSTRAINT "shops_name_present" CHECK (length(trim("shops"."name")) between 1 and 200),
	CONSTRAINT "shops_currency_code" CHECK ("shops"."currency" ~ '^[A-Z]{3}$'),
	CONSTRAINT "shops_time_zone_present" CHECK (length("shops"."time_zone") between 1 and 100),
	CONSTRAINT "shops_weight_unit_known" CHECK ("shops"."weight_unit" in ('lb', 'kg')),
	CONSTRAINT "shops_length_unit_known" CHECK ("shops"."length_unit" in ('in', 'mm'))
);
--> statement-breakpoint
ALTER TABLE "animals" ADD CONSTRAINT "animals_day_known" FOREIGN KEY ("shop_id","day_id") REFERENCES "public"."cutting_days"("shop_id","day_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "animals" ADD CONSTRAINT "animals_farm_known" FOREIGN KEY ("shop_id","farm_id") REFERENCES "public"."farms"("shop_id","farm_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "carcass_shares" ADD CONSTRAINT "carcass_shares_order_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."orders"("shop_id","order_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "carcass_shares" ADD CONSTRAINT "carcass_shares_animal_known" FOREIGN KEY ("shop_id","only_animal") REFERENCES "public"."animals"("shop_id","animal_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "cutting_days" ADD CONSTRAINT "cutting_days_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "locks" ADD CONSTRAINT "locks_day_known" FOREIGN KEY ("shop_id","day_id") REFERENCES "public"."cutting_days"("shop_id","day_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "locks" ADD CONSTRAINT "locks_side_known" FOREIGN KEY ("shop_id","side_id") REFERENCES "public"."sides"("shop_id","side_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "order_lines" ADD CONSTRAINT "order_lines_order_known" FOREIGN KEY ("shop_id","order_id") REFERENCES "public"."orders"("shop_id","order_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "order_lines" ADD CONSTRAINT "order_lines_animal_known" FOREIGN KEY ("shop_id","only_animal") REFERENCES "public"."animals"("shop_id","animal_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "orders" ADD CONSTRAINT "orders_day_known" FOREIGN KEY ("shop_id","day_id") REFERENCES "public"."cutting_days"("shop_id","day_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "orders" ADD CONSTRAINT "orders_person_known" FOREIGN KEY ("shop_id","person_id") REFERENCES "public"."people"("shop_id","person_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sides" ADD CONSTRAINT "sides_animal_known" FOREIGN KEY ("shop_id","animal_id") REFERENCES "public"."animals"("shop_id","animal_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_operations" ADD CONSTRAINT "plan_operations_side_planned" FOREIGN KEY ("shop_id","plan_id","side_id") REFERENCES "public"."plan_sides"("shop_id","plan_id","side_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_pieces" ADD CONSTRAINT "plan_pieces_plan_known" FOREIGN KEY ("shop_id","plan_id") REFERENCES "public"."plans"("shop_id","plan_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_pieces" ADD CONSTRAINT "plan_pieces_side_planned" FOREIGN KEY ("shop_id","plan_id","side_id") REFERENCES "public"."plan_sides"("shop_id","plan_id","side_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_pieces" ADD CONSTRAINT "plan_pieces_animal_known" FOREIGN KEY ("shop_id","animal_id") REFERENCES "public"."animals"("shop_id","animal_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_pieces" ADD CONSTRAINT "plan_pieces_line_known" FOREIGN KEY ("shop_id","line_id") REFERENCES "public"."order_lines"("shop_id","line_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_pieces" ADD CONSTRAINT "plan_pieces_share_known" FOREIGN KEY ("shop_id","share_id") REFERENCES "public"."carcass_shares"("shop_id","share_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_sides" ADD CONSTRAINT "plan_sides_plan_known" FOREIGN KEY ("shop_id","plan_id") REFERENCES "public"."plans"("shop_id","plan_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_sides" ADD CONSTRAINT "plan_sides_side_known" FOREIGN KEY ("shop_id","side_id") REFERENCES "public"."sides"("shop_id","side_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plan_sides" ADD CONSTRAINT "plan_sides_share_known" FOREIGN KEY ("shop_id","share_id") REFERENCES "public"."carcass_shares"("shop_id","share_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "plans" ADD CONSTRAINT "plans_day_known" FOREIGN KEY ("shop_id","day_id") REFERENCES "public"."cutting_days"("shop_id","day_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "audit" ADD CONSTRAINT "audit_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "idempotency_keys" ADD CONSTRAINT "idempotency_keys_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "ledger" ADD CONSTRAINT "ledger_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "counters" ADD CONSTRAINT "counters_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "farms" ADD CONSTRAINT "farms_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "people" ADD CONSTRAINT "people_shop_known" FOREIGN KEY ("shop_id") REFERENCES "public"."shops"("shop_id") ON DELETE no action ON UPDATE no action;--> statement-breakpoint
ALTER TABLE "sessions" ADD CONSTRAINT "sessions_person_known" FOREIGN KEY ("shop_id","person_id") REFERENCES "public"."people"("shop_id","person_id") ON DELETE cascade ON UPDATE no action;--> statement-breakpoint
CREATE INDEX "animals_of_day" ON "animals" USING btree ("shop_id","day_id");--> statement-breakpoint
CREATE INDEX "orders_of_day" ON "orders" USING btree ("shop_id","day_id");--> statement-breakpoint
CREATE INDEX "plan_pieces_of_line" ON "plan_pieces" USING btree ("shop_id","line_id");--> statement-breakpoint
CREATE INDEX "audit_by_time" ON "audit" USING btree ("shop_id","at");--> statement-breakpoint
CREATE INDEX "idempotency_keys_by_time" ON "idempotency_keys" USING btree ("shop_id","created_at");--> statement-breakpoint
CREATE UNIQUE INDEX "people_one_per_email" ON "people" USING btree ("shop_id",lower("email"));