import { Button } from "./controls/Button";

interface MessageProps {
  readonly text: string;
  readonly onClose: () => void;
}

/** Something that went wrong beside the dialing: it covers nothing, and stays until one has read it and closes it. */
export function Message({ text, onClose }: MessageProps) {
  return (
    <div className="bench-message notice flex items-start gap-4 w-full max-w-[640px] print:hidden">
      <p className="flex-1 wrap-anywhere" role="alert">
        {text}
      </p>
      <Button className="flex-none" aria-label="Close this message" onClick={onClose}>
        Close
      </Button>
    </div>
  );
}
