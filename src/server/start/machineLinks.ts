import type { Outcome } from "../backup/commands";
import { inviteFirst, linkFromMachine } from "../people/links";
import { ServerError } from "../words/serverError";
import { serverProblem } from "../words/serverWords";
import type { World } from "../world/world";

/** Makes the link by which an instructor sets a new password. @throws {ServerError} "no-such-login" */
export async function newPassword(login: string, world: World): Promise<Outcome> {
  const link = await linkFromMachine(login, world);
  if (link === null) throw new ServerError(serverProblem("no-such-login", [], { login }));
  const lines = [
    "Start the class server, and put this behind the address of its page. It works once, within a day:",
    `#/instructor/password?token=${link.token}`,
    `Whoever opens it sets the password of ${login}. The audit log says that it was made on this machine.`,
  ];
  return { lines, isWell: true };
}

/** Makes the link that sets up one more school in this database. */
export async function newSchool(world: World): Promise<Outcome> {
  const lines = [
    "Start the class server, and put this behind the address of its page. It works once, within a day:",
    `#/instructor/first?token=${await inviteFirst(world)}`,
    "Whoever opens it sets up a school of their own and is its head. Schools of one database see nothing of each other.",
  ];
  return { lines, isWell: true };
}
