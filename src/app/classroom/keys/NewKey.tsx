import { useState } from "react";
import { Button } from "../../parts/controls/Button";
import { Dialog } from "../../parts/controls/Dialog";

/** Makes a new signing key, once somebody has read what follows from it. */
export function NewKey({ onMake }: { readonly onMake: () => void }) {
  const [isOpen, setIsOpen] = useState(false);
  const close = () => setIsOpen(false);
  const confirm = () => {
    close();
    onMake();
  };
  return (
    <>
      <Button aria-haspopup="dialog" onClick={() => setIsOpen(true)}>
        Make a new key
      </Button>
      <Dialog title="Make a new signing key?" isOpen={isOpen} onClose={close}>
        <p>
          Make one when someone may have copied the server’s key folder. The server signs with the new key from now on.
          Files that you saved before keep their signature, by the fingerprint of the old key. You cannot undo this.
        </p>
        <p className="mt-3">
          Whoever has the old key can still sign with it. Save the records that matter again, and print the new
          fingerprint for everyone who checks records.
        </p>
        <div className="row mt-4">
          <Button className="primary" onClick={confirm}>
            Make a new key
          </Button>
          <Button onClick={close}>Cancel</Button>
        </div>
      </Dialog>
    </>
  );
}
