import { problemsOf, type Words } from "../../wording/problem";

/** What can keep the class server from starting or from its work. */
export const SERVER_WORDS = {
  "folder-in-use":
    ": the folder {folder} is in use by another class server (process {process}); stop that one first, or give this one a folder of its own with --data",
  "folder-not-made": ": the folder {folder} cannot be written: {why}; choose another with --data",
  "not-migrated":
    ": the database could not be brought to this version: {why}; restore a backup or use the version that wrote it",
  "no-database": ": the database at {place} does not answer: {why}; start it, or check the address after --database",
  "database-too-old":
    ": the database at {place} is PostgreSQL {found}; use {least} or newer, or leave --database out for the embedded one",
  "port-taken": ": port {port} is in use; stop what uses it, or choose another with --port",
  "cannot-listen": ": the server cannot listen on {host}: {why}; choose another address with --host",
  "no-port": ': "{text}" is no port; give a whole number from 0 to 65535 after --port',
  "unknown-option": ': "{line}" is not understood; --help shows the options',
  "no-such-command":
    ': "{line}" is not understood; there are "backup FILE", "restore FILE", "check", "new-password NAME" and "new-school", and without one the server starts',
  "no-such-login": ": nobody signs in as {login}; give the sign-in name of an instructor who may sign in",
  "backup-not-written": ": the backup {file} cannot be written: {why}; make room or choose another place",
  "backup-damaged": ": {file} cannot be restored: {why}; nothing was changed, so take another backup",
  "backup-of-other-version":
    ": {file} is of another version of Gatefall; restore it with that one, then start this one",
  "database-not-empty": ": there is a school in {place} already; restore into an empty one with --data or --database",
  "check-record-gone": ": record {id} is gone, and nobody deleted it (place {place} of the chain)",
  "check-record-changed": ": record {id} is not what was received (place {place} of the chain)",
  "check-record-unchained": ": record {id} is not in the chain",
  "check-chain-missing": ": place {place} of the chain is missing or comes twice",
  "check-chain-changed": ": the chain was changed at place {place}",
  "check-key": ": key {id} is not the one that it was made as",
  "tls-no-name":
    ": this server's own authority vouches for addresses of private networks only, and {names} is none; get a certificate and give it with --tls CERT KEY",
  "tls-not-read": ": {file} cannot be read: {why}; give a certificate and its key, both PEM, after --tls",
  "tls-not-good": ": {certificate} and {key} do not make a pair: {why}; give a certificate and its own key, both PEM",
  "tls-no-key":
    ": --tls wants a certificate and its key, or the word own; the key may stand in GATEFALL_TLS_KEY where the certificate stands in GATEFALL_TLS",
  "demo-alone": ": --demo shows invented data alone; leave out --data, --database and commands",
  "not-built": ": the app could not be built; run npx vite build to see why",
} as const satisfies Words;

/** Problems of the class server. */
export const serverProblem = problemsOf(SERVER_WORDS);
