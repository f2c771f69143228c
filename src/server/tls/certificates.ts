import "reflect-metadata";
import { AsnConvert } from "@peculiar/asn1-schema";
import {
  GeneralName,
  GeneralSubtree,
  GeneralSubtrees,
  id_ce_nameConstraints,
  NameConstraints,
} from "@peculiar/asn1-x509";
import * as x509 from "@peculiar/x509";
import { NAME_ENDINGS, NETWORKS } from "./privateNames";

/*
 * An authority of a school's own, and certificates that it gives its class server (RFC 5280). Its constraint of names
 * keeps the harm small where somebody steals its key: it can vouch for addresses of private networks alone.
 */

/** A certificate and its private key, both PEM. */
export interface Pair {
  readonly certificate: string;
  readonly key: string;
}

const KEYS = { name: "ECDSA", namedCurve: "P-256" } as const;
const SIGNING = { name: "ECDSA", hash: "SHA-256" } as const;
const DAY_MS = 24 * 3600 * 1000;

/** How long an authority is good, days. */
const AUTHORITY_DAYS = 3650;

/** How long a server's certificate is good, days. Devices refuse 825 and more from an authority that a person added. */
export const SERVER_DAYS = 397;

/** A clock of a device may be slow by so much, ms. */
const SLOW_CLOCK_MS = DAY_MS;

const permitted = [
  ...NETWORKS.map((network) => new GeneralName({ iPAddress: network })),
  ...NAME_ENDINGS.map((ending) => new GeneralName({ dNSName: ending })),
];

const privateNamesOnly = () =>
  new x509.Extension(
    id_ce_nameConstraints,
    true,
    AsnConvert.serialize(
      new NameConstraints({
        permittedSubtrees: new GeneralSubtrees(permitted.map((base) => new GeneralSubtree({ base }))),
      }),
    ),
  );

const newKeys = () => crypto.subtle.generateKey(KEYS, true, ["sign", "verify"]);

async function pair(certificate: x509.X509Certificate, key: CryptoKey): Promise<Pair> {
  const der = await crypto.subtle.exportKey("pkcs8", key);
  return { certificate: `${certificate.toString("pem")}\n`, key: `${x509.PemConverter.encode(der, "PRIVATE KEY")}\n` };
}

const from = (now: number, days: number) => ({
  notBefore: new Date(now - SLOW_CLOCK_MS),
  notAfter: new Date(now - SLOW_CLOCK_MS + days * DAY_MS),
});

/** Makes an authority. @param name - of the machine, to tell it from others in a device's list; @param now - ms */
export async function makeAuthority(name: string, now: number): Promise<Pair> {
  const keys = await newKeys();
  const certificate = await x509.X509CertificateGenerator.createSelfSigned({
    name: [{ CN: [`Gatefall class on ${name}`] }],
    ...from(now, AUTHORITY_DAYS),
    signingAlgorithm: SIGNING,
    keys,
    extensions: [
      new x509.BasicConstraintsExtension(true, 0, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign, true),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
      privateNamesOnly(),
    ],
  });
  return pair(certificate, keys.privateKey);
}

/** A name that a certificate is for. */
export interface CertificateName {
  readonly type: "dns" | "ip";
  readonly value: string;
}

/** A certificate for a server of some names, by an authority, good for SERVER_DAYS. @param now - ms */
export async function makeServerPair(authority: Pair, names: readonly CertificateName[], now: number): Promise<Pair> {
  const issuer = new x509.X509Certificate(authority.certificate);
  const signingKey = await crypto.subtle.importKey("pkcs8", x509.PemConverter.decodeFirst(authority.key), KEYS, false, [
    "sign",
  ]);
  const keys = await newKeys();
  const certificate = await x509.X509CertificateGenerator.create({
    subject: [{ CN: ["Gatefall class server"] }],
    issuer: issuer.subjectName,
    ...from(now, SERVER_DAYS),
    signingAlgorithm: SIGNING,
    publicKey: keys.publicKey,
    signingKey,
    extensions: [
      new x509.BasicConstraintsExtension(false, undefined, true),
      new x509.KeyUsagesExtension(x509.KeyUsageFlags.digitalSignature, true),
      new x509.ExtendedKeyUsageExtension([x509.ExtendedKeyUsage.serverAuth]),
      new x509.SubjectAlternativeNameExtension([...names]),
      await x509.AuthorityKeyIdentifierExtension.create(issuer),
      await x509.SubjectKeyIdentifierExtension.create(keys.publicKey),
    ],
  });
  return pair(certificate, keys.privateKey);
}
