#!/usr/bin/env bash
# Runs once, when the server's data folder is new. The application gets an account of its own that owns its database
# and is no superuser: a superuser passes by row-level security, the second wall between shops. The service works as
# flitchbook_app, which owns nothing; the migrations say what that role may do.
set -euo pipefail
: "${FLITCHBOOK_PASSWORD:?}"
psql --no-psqlrc --set ON_ERROR_STOP=1 --set password="$FLITCHBOOK_PASSWORD" --username "${POSTGRES_USER:-postgres}" <<'SQL'
create role flitchbook login nosuperuser nocreatedb nocreaterole password :'password';
create role flitchbook_app nologin nosuperuser nocreatedb nocreaterole nobypassrls;
grant flitchbook_app to flitchbook;
create database flitchbook owner flitchbook encoding 'UTF8' template template0;
revoke connect on database flitchbook from public;
SQL
