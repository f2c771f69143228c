import { useRemembered } from "../storage/remembered";

const SWITCH = ["off", "on"] as const;

/** Whether sounds are on, and the switch for them. */
export function useSound() {
  const [sound, setSound] = useRemembered("sound", SWITCH);
  return { isOn: sound === "on", toggle: () => setSound(sound === "on" ? "off" : "on") };
}
