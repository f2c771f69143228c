import type { ReactNode } from "react";
import image from "../../../../shared/firmware/encoder.hex?raw";
import wiring from "../../../../shared/firmware/wiring.svg?url&no-inline";
import { Button } from "../../parts/controls/Button";
import { saveFile } from "../../parts/files/saveFile";
import { Lines } from "../../parts/Lines";
import { type SetupAsked, setupAddress } from "../session/setupAddress";
import { CAUTIONS, ENCODER_CAUTIONS, ENCODER_PARTS, ENCODER_STEPS, NOT_TRIED, PRINTED_PARTS } from "./buildWords";
import { CameraOnBooks, CheckLine, DiscOnLid, DiscOnSheet } from "./drawings";
import { PrintSheets } from "./PrintSheets";

interface StepProps {
  readonly title: string;
  readonly drawing: ReactNode;
  readonly children: ReactNode;
}

/** One step of building, with its drawing. */
const Step = ({ title, drawing, children }: StepProps) => (
  <li className="card">
    {drawing}
    <h3 className="text-body">{title}</h3>
    {children}
  </li>
);

interface ListProps {
  readonly of: readonly string[];
}

const Parts = ({ of }: ListProps) => (
  <div>
    <h3 className="mb-2">What you need</h3>
    <Lines of={of} />
  </div>
);

const Cautions = ({ of }: ListProps) => (
  <div className="notice">
    <h3 className="mb-2">Cautions</h3>
    <Lines of={of} />
  </div>
);

function PrintedDial({ perTurn }: Pick<SetupAsked, "perTurn">) {
  return (
    <section className="stack gap-5" aria-labelledby="build-printed">
      <h2 id="build-printed" className="text-lead">
        A printed dial before a camera
      </h2>
      <Parts of={PRINTED_PARTS} />
      <Cautions of={CAUTIONS} />
      <PrintSheets perTurn={perTurn} />
      <ol className="plain tiles-[340px] gap-4">
        <Step title="1. Print both sheets at 100 %" drawing={<CheckLine />}>
          <p>
            Save both sheets, open each file in a browser, and print it on the paper that you chose. Choose “100 %” or
            “actual size”, not “fit to page”. Lay a ruler on each check line: two on the base sheet, one below the disc.
            Each must be 100 mm long, to half a millimeter. If not, set the margins to “none” and print again.
          </p>
        </Step>
        <Step title="2. Cut out the disc and glue it on the lid" drawing={<DiscOnLid />}>
          <p>
            Cut along the outer circle. Put the pin through the cross in the middle, then through the lid and a washer.
            Glue the disc flat. Glue the knob inside the dashed circle, so that it covers no ring.
          </p>
        </Step>
        <Step title="3. Tape the base sheet down and put the disc on it" drawing={<DiscOnSheet />}>
          <p>
            Tape the sheet flat to the table or a board. Set the disc on the printed circle. The triangle is the index:
            you read the number under it. The four square marks stay free.
          </p>
        </Step>
        <Step title="4. Fix the camera above it" drawing={<CameraOnBooks />}>
          <p>
            The whole sheet fills most of the picture: about 30 cm away for many cameras. Look from straight above, or
            tilted by up to 30 degrees. Put the lamp at the side: no glare on the disc, no shadow of your hand across
            it. The camera must not move while you turn.
          </p>
        </Step>
      </ol>
    </section>
  );
}

const saveImage = () => saveFile({ name: "encoder.hex", type: "text/plain", text: image });

function Encoder() {
  return (
    <section className="stack gap-5" aria-labelledby="build-encoder">
      <h2 id="build-encoder" className="text-lead">
        An encoder on a serial line
      </h2>
      <Parts of={ENCODER_PARTS} />
      <Cautions of={ENCODER_CAUTIONS} />
      <figure>
        <img
          className="block w-full h-auto max-w-[760px] plate"
          src={wiring}
          width="760"
          height="400"
          alt="Wiring. Encoder: supply to 5 V, ground to GND, line A to D2, line B to D3. Button: one side to D4, the other to GND."
        />
        <figcaption className="mt-2 text-small print:hidden">
          <a href={wiring} target="_blank" rel="noreferrer">
            Open the wiring by itself
          </a>
        </figcaption>
      </figure>
      <ol className="pl-5 grid gap-2">
        {ENCODER_STEPS.map((step) => (
          <li key={step}>{step}</li>
        ))}
      </ol>
      <Button className="self-start print:hidden" onClick={saveImage}>
        Save the program’s image
      </Button>
    </section>
  );
}

/** How to make a dial for the hand: sheets to print, drawings, parts, cautions. */
export function PrintPage({ asked }: { readonly asked: SetupAsked }) {
  return (
    <main className="page gap-6 max-w-[920px]">
      <header className="stack">
        <h1 tabIndex={-1}>Print and build a dial</h1>
        <p>A mouse has no weight and no rim. These two dials have both, and the app follows them.</p>
        <p className="text-soft">{NOT_TRIED}</p>
        <div className="row print:hidden">
          <a className="button" href={setupAddress({ ...asked, isPrint: false })}>
            To the setup
          </a>
          <Button onClick={() => print()}>Print this page</Button>
        </div>
      </header>
      <PrintedDial perTurn={asked.perTurn} />
      <Encoder />
    </main>
  );
}
