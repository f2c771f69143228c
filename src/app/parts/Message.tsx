import "./message.css";

interface MessageProps {
  readonly text: string;
  readonly onClose: () => void;
}

/** Something that went wrong beside the dialing: it covers nothing, and stays until one has read it and closes it. */
export function Message({ text, onClose }: MessageProps) {
  return (
    <div className="bench-message">
      <p role="alert">{text}</p>
      <button type="button" className="button" aria-label="Close this message" onClick={onClose}>
        Close
      </button>
    </div>
  );
}
