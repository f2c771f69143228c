import { useEffect, useRef } from "react";

interface LinkRowProps {
  /** What the links lead to, for a screen reader. */
  readonly label: string;
  readonly className?: string;
  readonly links: readonly { readonly key: string; readonly label: string; readonly href: string }[];
  /** Key of the link that is open now. */
  readonly current: string;
}

/** Links side by side. Where they do not fit the row scrolls, and the one that is open comes into sight. */
export function LinkRow({ label, className, links, current }: LinkRowProps) {
  const open = useRef<HTMLAnchorElement>(null);
  useEffect(() => {
    if (open.current?.dataset.key === current) open.current.scrollIntoView({ block: "nearest", inline: "center" });
  }, [current]);
  return (
    <nav className={className} aria-label={label}>
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
