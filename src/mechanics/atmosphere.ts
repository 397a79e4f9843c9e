/** Sea-level standard day, Pa. U.S. Standard Atmosphere 1976. */
export const STANDARD_PRESSURE = 101325
