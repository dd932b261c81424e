const GRADES = ['no', 'poor', 'fair', 'good', 'very good'] as const;

/** How well a week suits a batch, in a word: fifths of its points of a hundred. */
export const gradeOf = (score: number): (typeof GRADES)[number] =>
  GRADES[Math.min(GRADES.length - 1, Math.floor((score * GRADES.length) / 100))]!;

/** “a good week”, or that it suits not at all. */
export const weekInWords = (score: number): string => {
  const grade = gradeOf(score);
  return grade === 'no' ? 'a week that does not suit' : `a ${grade} week`;
};
