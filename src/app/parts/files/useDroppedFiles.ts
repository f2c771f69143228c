import { useEffect, useRef, useState } from "react";

const hasFiles = ({ dataTransfer }: DragEvent) => dataTransfer?.types.includes("Files") === true;

/**
 * Takes files dropped anywhere on the page: one that missed a field would lead the browser away from the page, and what
 * it holds in memory would be gone.
 *
 * @returns whether files are held over the page
 */
export function useDroppedFiles(take: (files: readonly File[]) => void): boolean {
  const [isOver, setOver] = useState(false);
  const taking = useRef(take);
  taking.current = take;
  useEffect(() => {
    const stopping = new AbortController();
    const { signal } = stopping;
    const over = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const leave = ({ relatedTarget }: DragEvent) => relatedTarget === null && setOver(false);
    const drop = (event: DragEvent) => {
      if (!hasFiles(event)) return;
      event.preventDefault();
      setOver(false);
      taking.current([...(event.dataTransfer?.files ?? [])]);
    };
    addEventListener("dragover", over, { signal });
    addEventListener("dragleave", leave, { signal });
    addEventListener("drop", drop, { signal });
    return () => stopping.abort();
  }, []);
  return isOver;
}
