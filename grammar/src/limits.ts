/** The sizes beyond which text is refused with a clear message instead of being read. */

export const limits = {
  /** Characters in one line. */
  line: 20_000,
  /** Characters in a name. */
  name: 200,
  /** Digits in one number. */
  digits: 12,
  /** Characters in one note line. */
  note: 10_000,
  /** Lines in a file; what follows is not read. */
  lines: 200_000,
} as const;
