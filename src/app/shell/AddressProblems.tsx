import { useMemo } from "react";
import { benchAddress } from "../exercises/bench/benchAddress";
import { Message } from "../parts/Message";
import { useMessages } from "../parts/useMessages";

/** All that is wrong with the address of a page other than the bench, which says it itself; each can be closed. */
export function AddressProblems({ query, seed }: { readonly query: URLSearchParams; readonly seed: number }) {
  const problems = useMemo(() => benchAddress(query, { help: "full", seed }).problems, [query, seed]);
  const { texts, close } = useMessages(problems);
  if (texts.length === 0) return null;
  return (
    <div className="grid justify-items-center gap-3 py-3 px-4 print:hidden">
      {texts.map((text) => (
        <Message key={text} text={text} onClose={() => close(text)} />
      ))}
    </div>
  );
}
