/** Goes to another address: in the tablet's own page without loading anything, else as a link does. */
let inside = null;
export const within = show => { inside = show; };
export const go = address => { if (inside) inside(address); else location.href = address; };
