const LOCAL_NAMES: readonly string[] = ["", "localhost", "[::1]"];

/** Whether no other machine can open the page's address: the loopback names and 127.0.0.0/8 (RFC 6761, RFC 1122). */
export function isLocalPage({ hostname, protocol }: Pick<Location, "hostname" | "protocol">): boolean {
  const isLoopback = /^127(?:\.\d{1,3}){3}$/.test(hostname);
  return protocol === "file:" || LOCAL_NAMES.includes(hostname) || hostname.endsWith(".localhost") || isLoopback;
}
