import { isIPv6 } from "node:net";
import type { FastifyRequest } from "fastify";

/** Groups of an IPv6 address that a network has: whoever has one has all addresses in it. */
const NETWORK_GROUPS = 4;
const GROUPS = 8;

function networkOf(address: string): string {
  const [before = "", after = ""] = address.split("%", 1)[0]?.split("::") ?? [];
  const groups = (part: string) => (part === "" ? [] : part.split(":"));
  const [head, tail] = [groups(before), groups(after)];
  const all = address.includes("::")
    ? [...head, ...Array(GROUPS - head.length - tail.length).fill("0"), ...tail]
    : head;
  return `${all.slice(0, NETWORK_GROUPS).join(":")}::/64`;
}

/** Where a request came from, as far as tries are counted: an IPv4 address, or an IPv6 network (its first 64 bits). */
export function addressOf({ ip }: Pick<FastifyRequest, "ip">): string {
  const four = ip.replace(/^::ffff:(?=\d+\.\d+\.\d+\.\d+$)/i, "");
  return isIPv6(four) ? networkOf(four) : four;
}
