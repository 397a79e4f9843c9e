/**
 * Half of the charge burnt at 8° after top dead centre gives best torque. Heywood 1988,
 * section 9.1 (peak pressure near 16°, half burnt near 10° after top dead centre), from memory;
 * 8° to 12° read where it is quoted.
 */
export const BEST_TORQUE_HALF_BURNT = (7 * Math.PI) / 180
