import { Button } from "../parts/controls/Button";
import { LinkRow } from "../parts/LinkRow";
import { useSound } from "../parts/page/useSound";
import { framed, PAGES, type PagePath } from "./address";
import { SkipLink } from "./SkipLink";
import { useTheme } from "./useTheme";

const PAGE_LINKS = PAGES.flatMap(({ path, label }) => (label === null ? [] : { key: path, label, href: `#/${path}` }));

/** The head of every page: the pages, and the switches of the whole app. */
export function Head({ page }: { readonly page: PagePath }) {
  const { theme, change } = useTheme();
  const sound = useSound();
  return (
    <header className="head print:hidden">
      <SkipLink hasDial={framed(page).hasDial} />
      <b className="head-name text-lead tracking-[0.01em]">Gatefall</b>
      <LinkRow label="Pages" links={PAGE_LINKS} current={page} />
      <div className="flex gap-3 ml-auto text-small">
        <Button aria-pressed={sound.isOn} onClick={sound.toggle}>
          Sound {sound.isOn ? "on" : "off"}
        </Button>
        <Button onClick={change} title="Change between light and dark">
          Theme: {theme}
        </Button>
      </div>
    </header>
  );
}
