import { BlockList, isIP } from "node:net";

/** Networks that are nobody's on the internet: RFC 1918, RFC 3927, RFC 4193, RFC 4291 (fe80), and a machine's own. */
export const NETWORKS = [
  "10.0.0.0/8",
  "172.16.0.0/12",
  "192.168.0.0/16",
  "169.254.0.0/16",
  "127.0.0.0/8",
  "fc00::/7",
  "fe80::/10",
  "::1/128",
] as const;

/** Ends of names that are nobody's on the internet: RFC 6761, RFC 6762, RFC 8375, and what ICANN keeps for private use. */
export const NAME_ENDINGS = ["localhost", "local", "home.arpa", "internal", "test"] as const;

const own = new BlockList();
for (const network of NETWORKS) {
  const [address = "", bits = ""] = network.split("/");
  own.addSubnet(address, Number(bits), isIP(address) === 6 ? "ipv6" : "ipv4");
}

/** Whether an address or a name is of a private network: nothing else gets a certificate of the server's own authority. */
export function isPrivateName(name: string): boolean {
  const family = isIP(name);
  if (family !== 0) return own.check(name, family === 6 ? "ipv6" : "ipv4");
  return NAME_ENDINGS.some((ending) => name === ending || name.endsWith(`.${ending}`));
}
