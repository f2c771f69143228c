import { deviceText } from "../../hand/sources/devices/deviceWords";
import type { DialDevice } from "../../hand/sources/devices/dialDevice";
import { DEVICES } from "../../hand/sources/devices/panel/devicesHere";
import { Button } from "../../parts/controls/Button";
import { rememberedSetup } from "../session/rememberedSetup";
import { rememberedText } from "../session/setupWords";
import { sourceLine } from "../session/sourceLines";

interface ChooseSourceProps {
  readonly onChoose: (device: DialDevice) => void;
}

function SourceRow({ device, onChoose }: ChooseSourceProps & { readonly device: DialDevice }) {
  const { needs, limits, isCoarse } = sourceLine(device.kind);
  const unsupported = device.unsupported();
  const remembered = rememberedSetup(device.kind);
  return (
    <li className="flex flex-wrap items-start justify-between gap-4 py-4 ruled">
      <div>
        <h3 className="text-body">
          {device.title}
          {isCoarse && <small className="ml-3 font-semibold">Coarse: for count and order, not for stops</small>}
        </h3>
        <p>
          <span className="text-soft">Needs:</span> {needs}
        </p>
        <p>
          <span className="text-soft">Limits:</span> {limits}
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
export const ChooseSource = ({ onChoose }: ChooseSourceProps) => (
  <ul className="plain">
    {DEVICES.map((device) => (
      <SourceRow key={device.kind} device={device} onChoose={onChoose} />
    ))}
  </ul>
);
