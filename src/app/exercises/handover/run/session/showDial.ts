/** Scrolls no farther than brings the whole dial into view. */
export function showDial(): void {
  document.querySelector(".run-hand .dial")?.scrollIntoView({ block: "nearest" });
}
