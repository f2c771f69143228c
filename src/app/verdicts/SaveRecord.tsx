import { useEffect, useState } from "react";
import { sheetId } from "../../drill/sheet/sheetId";
import { writeHashed } from "../../records/hashedRecord";
import type { KeptRecord } from "./keptRecord";

/** Saves a record with its hash as a file. */
export function SaveRecord({ kept }: { readonly kept: KeptRecord }) {
  const [address, setAddress] = useState<string>();
  useEffect(() => {
    const made = URL.createObjectURL(new Blob([writeHashed(kept)], { type: "application/json" }));
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [kept]);
  const name = `${sheetId(kept.record.sheet)}-${kept.record.startedAt.slice(0, 10)}.json`;
  return (
    <a className="button" download={name} href={address}>
      Save the record<span className="visually-hidden"> of {kept.record.sheet.title}</span>
    </a>
  );
}
