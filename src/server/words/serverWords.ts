import { problemsOf, type Words } from "../../wording/problem";

/** What can keep the class server from starting or from its work. */
export const SERVER_WORDS = {
  "folder-in-use":
    ": the folder {folder} is in use by another class server (process {process}); stop that one first, or give this one a folder of its own with --data",
  "folder-not-made": ": the folder {folder} cannot be written: {why}; choose another with --data",
  "not-migrated":
    ": the database could not be brought to this version: {why}; restore a backup or use the version that wrote it",
  "no-database": ": the database at {place} does not answer: {why}; start it, or check the address after --database",
  "port-taken": ": port {port} is in use; stop what uses it, or choose another with --port",
  "cannot-listen": ": the server cannot listen on {host}: {why}; choose another address with --host",
  "no-port": ': "{text}" is no port; give a whole number from 0 to 65535 after --port',
  "unknown-option": ': "{line}" is not understood; --help shows the options',
  "not-built": ": the app could not be built; run npx vite build to see why",
} as const satisfies Words;

/** Problems of the class server. */
export const serverProblem = problemsOf(SERVER_WORDS);
