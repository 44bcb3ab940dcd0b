export { LENGTH_SLACK_MM } from '../units/slack.js';
