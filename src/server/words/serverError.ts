import { ProblemError } from "../../wording/problem";
import { SERVER_WORDS } from "./serverWords";

/** What keeps the class server from starting or from its work. */
export class ServerError extends ProblemError {
  override readonly name = "ServerError";
  protected override readonly words = SERVER_WORDS;
}
