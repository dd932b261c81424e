import type { PlannedJob } from '../work/planned-work.js';

/**
 * Words by which a household calls work in the soil: beds, rows, posts, and what is sown or driven in.
 * Only for jobs whose fields say nothing of it.
 */
const IN_THE_SOIL =
  /\b(beds?|soil|compost in|dig|digging|till|tilling|plow|plowing|harrow|disk|rake|sow|sowing|seed|seeding|plant|planting|transplant|hoe|hoeing|weed|weeding|potato(es)?|garlic|fenc(e|es|ing)|posts?|trench|drain|ditch|level|grade|garden)\b/i;

/**
 * Whether a job of the household's own is likely work in the soil and was not told to wait for dry
 * ground: on wet ground it is worth a question, as nobody else can know.
 */
export const mayNeedDryGround = ({ key, name, asksDryGround, isInSoil }: PlannedJob): boolean =>
  key.startsWith('own/') && asksDryGround !== true && (isInSoil ?? IN_THE_SOIL.test(name));
