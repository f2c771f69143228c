import type { Authority } from "./tls";

/**
 * How to make each kind of device trust a school's own authority, line by line, for the operator to read.
 *
 * @param address - of the class server's page, with a slash at its end
 */
export const howToTrust = ({ file, fingerprint }: Authority, address: string): string[] => [
  "",
  "Each device must trust this school’s own authority once. Its certificate:",
  `  here     ${file}`,
  `  network  ${address}authority.crt (the browser warns the first time: go on, but compare the fingerprint before you install it)`,
  `Fingerprint (SHA-256), to compare on the device before you trust it:`,
  `  ${fingerprint}`,
  "  Windows   open the file: Install Certificate, Local Machine, Trusted Root Certification Authorities",
  "  macOS     open the file in Keychain Access, then its Trust: Always Trust",
  "  iOS       open the file, install the profile in Settings; then General, About, Certificate Trust Settings: on",
  "  Android   Settings, Security, More, Install a certificate, CA certificate",
  "  ChromeOS  browser settings, Privacy and security, Security, Manage certificates, Authorities: import",
  "  Linux     browser settings, certificates, Authorities: import",
  "  A browser that keeps certificates of its own wants the file in its own settings too.",
  "Menus differ by version; on a school’s devices whoever manages them can do it for all.",
  "It vouches for addresses of private networks alone. Whoever reads its folder can pose as your server there: keep that folder to yourself.",
];
