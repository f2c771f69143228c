import { useEffect } from "react";

/** Has the address follow what is shown, so that a reload or a link shows the same. @param address - null: stays */
export function useFollowedBy(address: string | null): void {
  useEffect(() => {
    if (address !== null) history.replaceState(null, "", address);
  }, [address]);
}
