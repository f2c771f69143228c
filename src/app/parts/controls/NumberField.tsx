import { type ReactNode, useContext, useEffect, useEffectEvent, useRef } from "react";
import { useLocale } from "react-aria/I18nProvider";
import { useNumberFormatter } from "react-aria/useNumberFormatter";
import {
  NumberField as AriaNumberField,
  FieldError,
  Input,
  Label,
  NumberFieldStateContext,
} from "react-aria-components/NumberField";

const PLAIN = { useGrouping: false, maximumFractionDigits: 6 } as const;
const PERCENT = { ...PLAIN, style: "percent" } as const;

/** A point or a comma, whichever this place writes; other signs a keyboard of the place has itself. */
function decimalSign(locale: string): string | undefined {
  const sign = new Intl.NumberFormat(locale).formatToParts(0.5).find(({ type }) => type === "decimal")?.value;
  return sign === "." || sign === "," ? sign : undefined;
}

/** Takes a comma for a point, and a point for a comma: the library refuses the one that the place does not write. */
function eitherSign(event: InputEvent, sign: string): void {
  const meant = event.data?.replace(/[.,]/g, sign) ?? null;
  if (meant === null || meant === event.data) return;
  event.preventDefault();
  document.execCommand("insertText", false, meant);
}

interface TypedProps {
  readonly value: number;
  readonly isPercent: boolean;
  readonly onNumber: (value: number) => void;
  readonly className: string;
  readonly size?: number | undefined;
}

/** What is typed counts with every key, not only once the field is left. */
function Typed({ value, isPercent, onNumber, ...input }: TypedProps) {
  const state = useContext(NumberFieldStateContext);
  const format = useNumberFormatter(isPercent ? PERCENT : PLAIN);
  const sign = decimalSign(useLocale().locale);
  const field = useRef<HTMLInputElement>(null);
  const known = useRef(value);
  const typed = state?.numberValue ?? Number.NaN;
  const tell = useEffectEvent(onNumber);
  const show = useEffectEvent(() => {
    state?.setInputValue(Number.isNaN(value) ? "" : format.format(value));
    state?.setNumberValue(value);
  });
  useEffect(() => {
    if (Object.is(typed, known.current)) return;
    known.current = typed;
    tell(typed);
  }, [typed]);
  useEffect(() => {
    if (Object.is(value, known.current)) return;
    known.current = value;
    show();
  }, [value]);
  useEffect(() => {
    const onInput = (event: InputEvent) => sign !== undefined && eitherSign(event, sign);
    const { current } = field;
    current?.addEventListener("beforeinput", onInput, true);
    return () => current?.removeEventListener("beforeinput", onInput, true);
  }, [sign]);
  return <Input ref={field} inputMode="decimal" {...input} />;
}

interface NumberFieldProps {
  readonly label: ReactNode;
  readonly id?: string;
  /** Nothing, or no number, where the field is empty. */
  readonly value: number | null | undefined;
  readonly onNumber: (value: number | undefined) => void;
  /** A share of 1, typed and shown in percent. */
  readonly isPercent?: boolean;
  /** What is wrong with the number, in a sentence. */
  readonly says?: string | undefined;
  readonly isInvalid?: boolean;
  readonly describedBy?: string | undefined;
  /** Width in digits. */
  readonly size?: number;
  /** Classes: of all of it, of the label, of the input. */
  readonly looks?: { readonly [Part in "field" | "label" | "input"]?: string };
  /** Stands behind the number: its unit. */
  readonly children?: ReactNode;
}

/** The attributes that are given: the library does not take any that are undefined. */
const given = ({ id, describedBy }: NumberFieldProps) => ({
  ...(id !== undefined && { id }),
  ...(describedBy !== undefined && { "aria-describedby": describedBy }),
});

/**
 * A number as the browser's language writes it, with a comma or a point. The arrow keys step it; nothing but a number can be
 * typed, and none is changed in silence: what is out of range is said.
 */
export function NumberField(props: NumberFieldProps) {
  const { label, value, onNumber, isPercent = false, says, size, looks = {}, children } = props;
  const isInvalid = props.isInvalid ?? says !== undefined;
  return (
    <AriaNumberField
      className={looks.field ?? "inline-flex items-center gap-3"}
      {...given(props)}
      defaultValue={value ?? Number.NaN}
      formatOptions={isPercent ? PERCENT : PLAIN}
      commitBehavior="validate"
      validationBehavior="aria"
      isInvalid={isInvalid}
      isWheelDisabled
    >
      <Label className={looks.label ?? ""}>{label}</Label>
      <Typed
        value={value ?? Number.NaN}
        isPercent={isPercent}
        onNumber={(typed) => onNumber(Number.isNaN(typed) ? undefined : typed)}
        className={looks.input ?? "field"}
        size={size}
      />
      {children}
      {says !== undefined && (
        <FieldError className="problem" elementType="span">
          {says}
        </FieldError>
      )}
    </AriaNumberField>
  );
}
