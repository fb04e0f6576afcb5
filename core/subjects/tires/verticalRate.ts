/** How stiff a radial tire stands, by its size and pressure. */
import { type Refusal, refuse } from '../../catalog.js';
import type { TireSize } from './size.js';

/** N/m in a kilogram-force per millimetre. */
const kilogramPerMillimetre = 9806.65;

/**
 * Vertical rate of a radial tire, N/m. Rhyne, "Development of a Vertical Stiffness Relationship for Belted Radial Tires", Tire Science and Technology 33
 * (2005), from memory: k = 0.00028 p sqrt((1.03 - 0.004 Ra) S (S Ra/50 + d)) + 3.45 kgf/mm, p in kPa, S and d in mm, Ra in per cent.
 * @param pressure gauge, Pa
 * @returns a refusal for sizes that are not metric
 */
export function verticalRate(size: TireSize, pressure: number): number | Refusal {
  if (size.form !== 'metric') return refuse('Only the rate of a tire of a metric size follows from its size.', 'tire.rate');
  const { width_mm: width, aspect, rimDiameter } = size;
  const area = (1.03 - 0.004 * aspect) * width * ((width * aspect) / 50 + rimDiameter * 1000);
  return (0.00028 * (pressure / 1000) * Math.sqrt(area) + 3.45) * kilogramPerMillimetre;
}
