/**
 * Alphanumeric sizes (BR78-13): the letter is a load, not a width; there is no I. Pounds, at 24 psi and at 32 psi (load range B).
 *
 * Source: row B seen in nhtsa.gov/interpretations/nht74-115 (FMVSS 109); the other rows FROM MEMORY of the TRA and FMVSS 109 tables.
 */
export const letterLoads_lb: Readonly<Record<string, { readonly at24psi: number; readonly at32psi: number }>> = {
  A: { at24psi: 900, at32psi: 1060 },
  B: { at24psi: 980, at32psi: 1150 },
  C: { at24psi: 1050, at32psi: 1230 },
  D: { at24psi: 1120, at32psi: 1320 },
  E: { at24psi: 1190, at32psi: 1400 },
  F: { at24psi: 1280, at32psi: 1500 },
  G: { at24psi: 1380, at32psi: 1620 },
  H: { at24psi: 1510, at32psi: 1770 },
  J: { at24psi: 1580, at32psi: 1860 },
  K: { at24psi: 1620, at32psi: 1900 },
  L: { at24psi: 1680, at32psi: 1970 },
  M: { at24psi: 1780, at32psi: 2090 },
  N: { at24psi: 1880, at32psi: 2210 },
};
