#!/bin/bash
# Makes the three roles of the fence and the database on a server of your own. The official PostgreSQL image runs this at its
# first start; on another server run it once as the superuser, with the three passwords in the environment.
# The embedded server does the same in RoleSetup.cs. A refused statement's message quotes what was typed: these roles' errors stay
# out of the server's log.
set -eu
: "${HAIRCLINIC_PROGRAM_PASSWORD:?}" "${HAIRCLINIC_MIGRATOR_PASSWORD:?}" "${HAIRCLINIC_KEEPER_PASSWORD:?}"

# Passwords come through psql's \getenv, not its command line, which other users of the machine could read.
psql --no-psqlrc --quiet --set=ON_ERROR_STOP=1 --username="${POSTGRES_USER:-postgres}" --dbname=postgres <<'SQL'
\getenv program_password HAIRCLINIC_PROGRAM_PASSWORD
\getenv migrator_password HAIRCLINIC_MIGRATOR_PASSWORD
\getenv keeper_password HAIRCLINIC_KEEPER_PASSWORD
create role hairclinic_program login nosuperuser nocreatedb nocreaterole noreplication nobypassrls password :'program_password';
create role hairclinic_migrator login nosuperuser nocreatedb nocreaterole noreplication bypassrls password :'migrator_password';
create role hairclinic_keeper login nosuperuser nocreatedb nocreaterole noreplication bypassrls password :'keeper_password';
alter role hairclinic_keeper set default_transaction_read_only = on;
grant pg_read_all_data to hairclinic_keeper;
alter role hairclinic_program set log_min_messages = log;
alter role hairclinic_migrator set log_min_messages = log;
alter role hairclinic_keeper set log_min_messages = log;
create database hairclinic owner hairclinic_migrator template template0 encoding 'UTF8' locale 'C';
revoke all on database hairclinic, postgres, template1 from public;
grant connect on database hairclinic to hairclinic_program, hairclinic_keeper;
SQL
