/** What can hurt at a step, in the look that every caution beside an act has. */
export function CautionLine({ children }: { readonly children: string }) {
  return (
    <p className="barred pl-4 text-small leading-[1.35]">
      <strong>Caution.</strong> {children}
    </p>
  );
}
