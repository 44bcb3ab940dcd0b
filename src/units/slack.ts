/**
 * Slack of comparisons of lengths, in millimetres: a minimum fails only below limit - slack, a maximum
 * only above limit + slack. Values are never rounded before they are compared.
 */
export const LENGTH_SLACK_MM = 0.0005;

/** Slack of comparisons of angles, in degrees. */
export const ANGLE_SLACK_DEG = 0.00005;
