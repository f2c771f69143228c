import { gzipSync } from "node:zlib";
import type { ClassServer } from "../http/routes";

/** Somebody of the demo who asks the server as a browser does: with the cookies that it gave, and its token. Mutable. */
export class DemoAsker {
  private readonly server: ClassServer;
  private readonly cookies: Record<string, string> = {};
  private csrf = "";

  constructor(server: ClassServer) {
    this.server = server;
  }

  get<Answer>(url: string): Promise<Answer> {
    return this.ask<Answer>("GET", url);
  }

  /** @param isPacked - sent compressed, as a bench sends its records */
  post<Answer = unknown>(url: string, body: object, isPacked = false): Promise<Answer> {
    return this.ask<Answer>("POST", url, JSON.stringify(body), isPacked);
  }

  /** @throws {Error} where the server refuses: the demo asks for nothing that it may not have */
  private async ask<Answer>(method: "GET" | "POST", url: string, json?: string, isPacked = false): Promise<Answer> {
    const response = await this.server.inject({
      method,
      url,
      cookies: this.cookies,
      headers: {
        "x-csrf": this.csrf,
        ...(json !== undefined && { "content-type": "application/json" }),
        ...(isPacked && { "content-encoding": "gzip" }),
      },
      ...(json !== undefined && { payload: isPacked ? gzipSync(json) : json }),
    });
    for (const { name, value } of response.cookies) this.cookies[name] = value;
    if (response.statusCode >= 400) throw new Error(`${method} ${url}: ${response.statusCode} ${response.body}`);
    const answer = response.body === "" ? null : response.json();
    if (typeof answer?.csrf === "string") this.csrf = answer.csrf;
    return answer;
  }
}
