/** Lets other messages in between two pieces of long work. */
export const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));
