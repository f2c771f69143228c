import type * as z from "zod/mini";
import type { madeCards } from "../../../school/wire/rosterWire";
import { Button } from "../../parts/controls/Button";
import { takeFocus } from "../../parts/page/takeFocus";
import { QrPicture } from "../../parts/qr/QrPicture";
import { shownName } from "../../parts/shownName";
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
  const place = `${shownName(cards.class.name)}, ${shownName(school)}`;
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
      <ul className="plain tiles-[320px] gap-4">
        {cards.cards.map(({ personId, name, token, code }) => (
          <li
            key={personId}
            className="plate flex flex-wrap content-start items-center gap-x-4 gap-y-2 p-4 wrap-anywhere break-inside-avoid"
          >
            <QrPicture
              className="flex-none w-[132px] print:w-[36mm]"
              address={joinAddress(token)}
              label={`QR code of the join card of ${shownName(name)}`}
            />
            <div className="stack flex-1">
              <b className="text-lead">{shownName(name)}</b>
              <span>{place}</span>
            </div>
            <p className="basis-full">
              Card code: <b className="whitespace-nowrap">{code}</b>
            </p>
            <small className="basis-full">
              Scan it to join. No camera? Open <b data-address>{joinAddress()}</b> and enter the card code. Lost? Tell
              your instructor.
            </small>
          </li>
        ))}
      </ul>
    </section>
  );
}
