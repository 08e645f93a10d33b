/** The worker that the server runs in, in a browser. */
import { startOn } from 'nappe-server';

startOn(self as unknown as Worker);
