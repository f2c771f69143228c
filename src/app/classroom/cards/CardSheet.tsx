import type * as z from "zod/mini";
import { harmlessName } from "../../../lock/harmlessText";
import type { madeCards } from "../../../school/wire/rosterWire";
import { Button } from "../../parts/controls/Button";
import { takeFocus } from "../../parts/page/takeFocus";
import { QrPicture } from "../../parts/qr/QrPicture";
import { joinAddress } from "../address/classroomAddress";

/** Cards that were just made. */
export type Cards = Readonly<z.infer<typeof madeCards>>;

interface SheetProps {
  readonly cards: Cards;
  readonly school: string;
  readonly onDone: () => void;
}

/** Join cards, on paper two beside each other, to be cut apart. Their secrets are known here alone. */
export function CardSheet({ cards, school, onDone }: SheetProps) {
  const place = `${harmlessName(cards.class.name)}, ${harmlessName(school)}`;
  return (
    <section className="stack gap-5" aria-labelledby="join-cards">
      <h2 id="join-cards" className="print:hidden" tabIndex={-1} ref={takeFocus}>
        Join cards
      </h2>
      <p className="notice print:hidden">
        Print the cards now. Each is shown this once: the server stores only what it needs to check it. A card is as
        good as a key to its person’s name. Earlier cards of these people are not good any more.
      </p>
      <div className="row print:hidden">
        <Button className="primary" onClick={() => print()}>
          Print the cards
        </Button>
        <Button onClick={onDone}>Done: back to the roster</Button>
      </div>
      <ul className="plain tiles-[330px] gap-4">
        {cards.cards.map(({ personId, name, token }) => (
          <li key={personId} className="plate flex gap-4 p-4 break-inside-avoid">
            <QrPicture
              className="flex-none w-[132px] print:w-[46mm]"
              address={joinAddress(token)}
              label={`QR code of the join card of ${harmlessName(name)}`}
            />
            <div className="stack justify-center wrap-anywhere">
              <b className="text-lead">{harmlessName(name)}</b>
              <span>{place}</span>
              <small>
                Scan it to join. No camera? Open <b data-address>{joinAddress()}</b> and enter the class code. Lost?
                Tell your instructor.
              </small>
            </div>
          </li>
        ))}
      </ul>
    </section>
  );
}
