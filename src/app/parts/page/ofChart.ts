/** Of a chart, for `useSelector`: where it is. */
export const stateOf = <State>({ value }: { readonly value: State }): State => value;

/** Of a chart, for `useSelector`: what it remembers. */
export const memoryOf = <Memory>({ context }: { readonly context: Memory }): Memory => context;
