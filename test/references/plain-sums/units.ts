/** Units of the rows, by their exact definitions (NIST SP 811, appendix B). Multiply to get SI. */
export const mm = 0.001;
export const inch = 0.0254;
export const foot = 0.3048;
export const mile = 1609.344;
export const lb = 0.45359237;
/** Standard gravity. */
export const g = 9.80665;
export const lbf = lb * g;
export const lbPerIn = lbf / inch;
export const nPerMm = 1000;
export const lbFt = lbf * foot;
export const lbFtPerDeg = lbFt * (180 / Math.PI);
export const degree = Math.PI / 180;
export const rpm = Math.PI / 30;
export const mph = 0.44704;
export const kmh = 1 / 3.6;
export const psi = lbf / inch ** 2;
export const bar = 100_000;
export const hp = 550 * lbf * foot;
export const GPa = 1e9;
export const fahrenheit = (degrees: number): number => ((degrees + 459.67) * 5) / 9;
export const celsius = (degrees: number): number => degrees + 273.15;
