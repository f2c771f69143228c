import type { ReactNode } from "react";
import { Tab, TabList, TabPanel, Tabs } from "react-aria-components/Tabs";
import "./controls.css";

interface TabChoice<Name extends string> {
  readonly name: Name;
  readonly label: string;
  /** Why it cannot be chosen now. */
  readonly closed?: string | undefined;
}

interface TabbedPanelProps<Name extends string> {
  /** What is chosen among, for a screen reader. */
  readonly label: string;
  readonly tabs: readonly TabChoice<Name>[];
  readonly chosen: Name;
  readonly onChoose: (name: Name) => void;
  readonly className: string;
  /** The panel of the tab that is chosen. */
  readonly children: ReactNode;
}

/** Tabs over one panel. Arrow keys move between them, over those that are closed; Enter and Space choose. */
export function TabbedPanel<Name extends string>(props: TabbedPanelProps<Name>) {
  const { label, tabs, chosen, onChoose, className, children } = props;
  const choose = (key: unknown) => {
    const found = tabs.find(({ name }) => name === key);
    if (found !== undefined) onChoose(found.name);
  };
  return (
    // By arrow a panel would be begun that is only passed on the way to the next.
    <Tabs className={className} selectedKey={chosen} onSelectionChange={choose} keyboardActivation="manual">
      <TabList className="tabs px-edge" aria-label={label}>
        {tabs.map((one) => (
          <Tab key={one.name} id={one.name} isDisabled={one.closed !== undefined}>
            <span title={one.closed}>{one.label}</span>
          </Tab>
        ))}
      </TabList>
      <TabPanel key={chosen} id={chosen}>
        {children}
      </TabPanel>
    </Tabs>
  );
}
