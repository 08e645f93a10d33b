/** When a resource is taken: bookings in whole minutes, and the latest time at which one more still fits. */

interface Booking {
  readonly start: number;
  readonly end: number;
}

/** Of something there are `capacity` of: cooks, ovens. Times may be negative. */
export class Calendar {
  private readonly bookings: Booking[] = [];

  constructor(readonly capacity: number) {}

  book(start: number, end: number): void {
    this.bookings.push({ start, end });
  }

  /** Takes back everything booked since there were `count`. */
  backTo(count: number): void {
    this.bookings.length = count;
  }

  get count(): number {
    return this.bookings.length;
  }

  /** The latest end, at most `end`, of a span of so many minutes in which one is free throughout. */
  latestEnd(end: number, minutes: number): number {
    for (let at = end; ; ) {
      const clash = this.clashIn(at - minutes, at);
      if (clash === null) return at;
      at = clash;
    }
  }

  /** A time to step back to: the latest start of a booking at the moment in the span when all are taken; null where one is always free. */
  private clashIn(start: number, end: number): number | null {
    const within = this.bookings.filter((booking) => booking.start < end && booking.end > start);
    if (within.length < this.capacity) return null;
    let latest: number | null = null;
    for (const { start: moment } of [{ start }, ...within]) {
      const at = Math.max(moment, start);
      const taken = within.filter((booking) => booking.start <= at && booking.end > at);
      if (taken.length < this.capacity) continue;
      // The span must end before one of those that are taken at this moment begins: the last to begin frees a place first.
      const begins = Math.max(...taken.map((booking) => booking.start));
      latest = Math.max(latest ?? Number.NEGATIVE_INFINITY, begins);
    }
    return latest;
  }
}
