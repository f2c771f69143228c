interface Appointment {
  /** Milliseconds since 1970. */
  readonly at: number;
  readonly act: () => Promise<void>;
}

/** What happens when: acts in the order of their moments, each of which may bring others. Mutable. */
export class Agenda {
  private readonly appointments: Appointment[] = [];

  /** @param at - milliseconds since 1970 */
  add(at: number, act: () => Promise<void>): void {
    const place = this.appointments.findIndex((one) => one.at > at);
    this.appointments.splice(place < 0 ? this.appointments.length : place, 0, { at, act });
  }

  /** Lets all of it happen. @param passTo - sets the clock on */
  async run(passTo: (at: number) => void): Promise<void> {
    for (let next = this.appointments.shift(); next !== undefined; next = this.appointments.shift()) {
      passTo(next.at);
      await next.act();
    }
  }
}
