import { DEVICE_SLOT } from "../../deviceSlot";
import { PRINTED_DIAL } from "../camera/camera";
import { DeviceHub } from "../deviceHub";
import type { DialDevice } from "../dialDevice";
import { ENCODER } from "../encoder";
import { GAMEPAD } from "../gamepad";
import { KNOB_KEYS } from "../knobKeys";
import { MIDI } from "../midi";
import { ORDINARY_DIAL } from "../ordinary/ordinaryCamera";
import { PHONE } from "../phone";
import { SCREEN_FRAMES } from "../screenFrames";

/** Every kind of device, the finest first. One more is one more line here. */
export const DEVICES: readonly DialDevice[] = [ENCODER, PRINTED_DIAL, ORDINARY_DIAL, PHONE, MIDI, GAMEPAD, KNOB_KEYS];

/** The device of this page. */
export const DEVICE_HUB = new DeviceHub(DEVICE_SLOT, SCREEN_FRAMES);

DEVICE_SLOT.source = () => DEVICE_HUB.source;
