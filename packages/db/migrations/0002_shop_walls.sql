-- Why: a second wall between shops. The service works as a role that owns nothing; each row is seen and written only by
-- units of its own shop, whatever the statement forgot to say. Ledger and audit can't be changed by that role at all.
-- Locks: ACCESS EXCLUSIVE on each table for an instant. Written for Postgres 15.
-- Undo: NO FORCE and DISABLE ROW LEVEL SECURITY, drop the policies and wall_by_shop; REVOKE; DROP ROLE.
DO $$
BEGIN
  IF NOT EXISTS (SELECT FROM pg_roles WHERE rolname = 'flitchbook_app') THEN
    CREATE ROLE flitchbook_app NOLOGIN NOSUPERUSER NOCREATEDB NOCREATEROLE NOBYPASSRLS;
  END IF;
EXCEPTION
  -- Roles belong to the server: another database of it may be migrated at this moment.
  WHEN duplicate_object OR unique_violation THEN NULL;
  WHEN insufficient_privilege THEN
    RAISE EXCEPTION 'the role flitchbook_app is missing: let an administrator run CREATE ROLE flitchbook_app NOLOGIN; GRANT flitchbook_app TO %;', quote_ident(current_user);
END
$$;
--> statement-breakpoint
-- Whoever migrates may take the role on; a superuser may anyway.
DO $$
BEGIN
  IF NOT pg_has_role(current_user, 'flitchbook_app', 'MEMBER') THEN
    EXECUTE format('GRANT flitchbook_app TO %I', current_user);
  END IF;
END
$$;
--> statement-breakpoint
GRANT USAGE ON SCHEMA public TO flitchbook_app;
--> statement-breakpoint
-- The shop of the unit of work: set for one transaction, so that it survives a pooler. Nothing set, nothing seen.
CREATE FUNCTION "unit_shop"() RETURNS uuid LANGUAGE sql STABLE PARALLEL SAFE
  RETURN nullif(current_setting('flitchbook.shop', true), '')::uuid;
--> statement-breakpoint
-- Every table of a shop gets its wall by this, in the migration that makes it. Kept rows are only appended to.
CREATE FUNCTION "wall_by_shop"("walled" regclass, "kept" boolean DEFAULT false) RETURNS void LANGUAGE plpgsql AS $$
BEGIN
  EXECUTE format('ALTER TABLE %s ENABLE ROW LEVEL SECURITY', walled);
  EXECUTE format('ALTER TABLE %s FORCE ROW LEVEL SECURITY', walled);
  EXECUTE format('CREATE POLICY %I ON %s USING ("shop_id" = (SELECT "unit_shop"())) WITH CHECK ("shop_id" = (SELECT "unit_shop"()))',
    (SELECT relname FROM pg_class WHERE oid = walled) || '_of_shop', walled);
  EXECUTE format('REVOKE ALL ON %s FROM flitchbook_app', walled);
  EXECUTE format('GRANT SELECT, INSERT%s ON %s TO flitchbook_app', CASE WHEN kept THEN '' ELSE ', UPDATE, DELETE' END, walled);
END
$$;
--> statement-breakpoint
SELECT "wall_by_shop"(c.oid, c.relname IN ('ledger', 'audit'))
  FROM pg_class c WHERE c.relkind = 'r' AND c.relnamespace = 'public'::regnamespace
    AND EXISTS (SELECT FROM pg_attribute a WHERE a.attrelid = c.oid AND a.attname = 'shop_id' AND NOT a.attisdropped);
--> statement-breakpoint
-- The list of shops is open to every unit: whoever signs in has no shop yet. It holds names and units, nobody's orders.
CREATE POLICY "shops_listed" ON "shops" FOR SELECT USING (true);
