/** Says that the lock under the hand is the one that was fitted; nothing where the address does not come from there. */
export function FromFitting({ query }: { readonly query: URLSearchParams }) {
  if (!query.has("from")) return null;
  const profile = query.get("profile");
  return (
    <p className="panel">
      This is the lock you fitted. <a href={`#/fitting?profile=${profile}`}>Back to the fit</a>
    </p>
  );
}
