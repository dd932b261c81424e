import type { ReactNode } from 'react';
import { Folded } from '../../shell/folded.js';

/** Fields that few need, shut to what they say; open where one of them is wrong. */
export function FoldedFields({
  isWrong,
  children,
  ...folded
}: {
  id: string;
  title: string;
  answer: string;
  isWrong: boolean;
  children: ReactNode;
}) {
  return (
    <Folded key={isWrong ? 'wrong' : 'right'} level={3} isOpenFirst={isWrong} {...folded}>
      {children}
    </Folded>
  );
}
