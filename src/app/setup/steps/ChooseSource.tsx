import type { Graduations } from "../../../lock/dial";
import type { SourceDescription } from "../../../realdial/sources/sourceDescription";
import { deviceText } from "../../hand/sources/devices/deviceWords";
import type { DialDevice } from "../../hand/sources/devices/dialDevice";
import { DEVICES } from "../../hand/sources/devices/panel/devicesHere";
import { Button } from "../../parts/controls/Button";
import { rememberedSetup } from "../session/rememberedSetup";
import { rememberedText } from "../session/setupWords";
import { sourceLine } from "../session/sourceLines";
import { isCoarseHere, limitsText, measuredStep } from "../session/stepWords";

interface ChooseSourceProps {
  /** What turns the dial now; null where nothing does. */
  readonly source: SourceDescription | null;
  /** Of the dial that is set up, graduations. */
  readonly perTurn: Graduations;
  readonly onChoose: (device: DialDevice) => void;
}

function SourceRow({ device, source, perTurn, onChoose }: ChooseSourceProps & { readonly device: DialDevice }) {
  const { kind } = device;
  const unsupported = device.unsupported();
  const remembered = rememberedSetup(kind);
  const step = measuredStep(kind, { source, remembered, perTurn });
  return (
    <li className="flex flex-wrap items-start justify-between gap-4 py-4 ruled">
      <div>
        <h3 className="text-body">
          {device.title}
          {isCoarseHere(kind, step) && (
            <small className="ml-3 font-semibold">Coarse: for count and order, not for stops</small>
          )}
        </h3>
        <p>
          <span className="text-soft">Needs:</span> {sourceLine(kind).needs}
        </p>
        <p>
          <span className="text-soft">Limits:</span> {limitsText(kind, step)}
        </p>
        {remembered !== null && <p className="text-soft">{rememberedText(remembered)}</p>}
        {unsupported !== null && <p className="problem">{deviceText(unsupported)}</p>}
      </div>
      <Button
        className="flex-none"
        disabled={unsupported !== null}
        aria-label={`Choose: ${device.title}`}
        onClick={() => onChoose(device)}
      >
        Choose
      </Button>
    </li>
  );
}

/** Every source, with what it needs and its limits. */
export const ChooseSource = (props: ChooseSourceProps) => (
  <ul className="plain">
    {DEVICES.map((device) => (
      <SourceRow key={device.kind} device={device} {...props} />
    ))}
  </ul>
);
