/**
 * Speed symbols and the speed that each stands for, in km/h as marked.
 *
 * Sources: J to M, R to T, H, Y from the EU's register of tire labels; N, P, Q, U, V, W from two public tables of the trade; F and G from one;
 * A1 to E from memory of ISO 4000-1 and UN R54. H stands between U and V; I, O and X do not exist; Z has no figure of its own (above 240).
 */
export const speedOfSymbol_kmh = {
  A1: 5,
  A2: 10,
  A3: 15,
  A4: 20,
  A5: 25,
  A6: 30,
  A7: 35,
  A8: 40,
  B: 50,
  C: 60,
  D: 65,
  E: 70,
  F: 80,
  G: 90,
  J: 100,
  K: 110,
  L: 120,
  M: 130,
  N: 140,
  P: 150,
  Q: 160,
  R: 170,
  S: 180,
  T: 190,
  U: 200,
  H: 210,
  V: 240,
  W: 270,
  Y: 300,
} as const;
export type SpeedSymbol = keyof typeof speedOfSymbol_kmh;

export const isSpeedSymbol = (text: string): text is SpeedSymbol => Object.hasOwn(speedOfSymbol_kmh, text);
