import { FIELD_WORDS } from "../../lock/fieldWords";
import type { Words } from "../../wording/problem";

/** What can be wrong with a command line, or with a file that it names: the path is an option or a file. */
export const USAGE_WORDS = {
  ...FIELD_WORDS,
  "action-needed": ": {command} needs an action: {actions}",
  "action-unknown": ': {command} cannot "{action}"; there are {actions}',
  "at-most": "must be at most {most}",
  "bad-arguments": ": {why}",
  "command-needed": ": name a command\n\n{overview}",
  "command-unknown": ': there is no command "{command}"; see gatefall --help',
  day: "takes a day such as {example}",
  "file-broken": "is not JSON after byte {at} (last whole part: {last})",
  "file-deep": "is nested more than 100 deep; no file of this kind is",
  "file-ends": "ends too soon, at byte {at} (last whole part: {last}); save or copy it again",
  "file-list-twice": 'has the list "{last}" twice; no file of this kind does',
  "file-not-json": "is not JSON: {why}",
  "file-part-large": "has more than 16 MB that is no list of records (after {last}); no file of this kind has",
  "file-refused": ": {file}: {why}",
  "file-unreadable": "cannot be read: {why}",
  missing: "is missing",
  "no-argument": ': {command} takes no argument ("{given}")',
  "no-file": ': {command} takes no file ("{given}")',
  "no-keys": "holds no keys of a school; give the fingerprint that the school printed, or the file of its keys",
  "one-combination": ": {command} takes one combination, such as {example}",
  "one-of-formats": "takes {formats}",
  "profile-needed": ": name a profile with --profile ID (see gatefall profiles)",
  "wants-check-file": ': {command} takes "check" and one file, or "-" for standard input',
  "wants-check-files": ': {command} takes "check" and one or more files, or "-" for standard input',
  "wants-file": ': {command} takes one file, or "-" for standard input',
  "wants-logbooks": ': {command} takes one or more logbooks, or "-" for standard input',
} as const satisfies Words;
