import { useEffect, useRef } from "react";

interface LinkRowProps {
  /** What the links lead to, for a screen reader. */
  readonly label: string;
  readonly className?: string;
  readonly links: readonly { readonly key: string; readonly label: string; readonly href: string }[];
  /** Key of the link that is open now. */
  readonly current: string;
}

/** Rounding of a scroll position, pixels. */
const SLACK = 2;

/**
 * Marks a row that scrolls across with the sides on which it goes on, for its style to show.
 *
 * @returns stops watching
 */
function markEnds(row: HTMLElement): () => void {
  const mark = () => {
    const { scrollLeft, scrollWidth, clientWidth, dataset } = row;
    dataset.before = String(scrollLeft > SLACK);
    dataset.after = String(scrollLeft + clientWidth < scrollWidth - SLACK);
  };
  const watch = new ResizeObserver(mark);
  watch.observe(row);
  row.addEventListener("scroll", mark, { passive: true });
  return () => {
    watch.disconnect();
    row.removeEventListener("scroll", mark);
  };
}

/** Links side by side. Where they do not fit the row scrolls, and the one that is open comes into sight. */
export function LinkRow({ label, className, links, current }: LinkRowProps) {
  const open = useRef<HTMLAnchorElement>(null);
  const row = useRef<HTMLElement>(null);
  useEffect(() => (row.current === null ? undefined : markEnds(row.current)), []);
  useEffect(() => {
    if (open.current?.dataset.key === current) open.current.scrollIntoView({ block: "nearest", inline: "center" });
  }, [current]);
  return (
    <nav ref={row} className={className} aria-label={label}>
      {links.map((link) => {
        const isOpen = link.key === current;
        return (
          <a
            key={link.key}
            ref={isOpen ? open : undefined}
            data-key={link.key}
            href={link.href}
            aria-current={isOpen ? "page" : undefined}
          >
            {link.label}
          </a>
        );
      })}
    </nav>
  );
}
