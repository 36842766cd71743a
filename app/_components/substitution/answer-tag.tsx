import type { Answer } from '@/lib/domain/substitution/substitute'
import { answerShape, answerWord } from '@/lib/domain/substitution/substitution-text'

const TONES: Partial<Record<Answer, string>> = { 'drop-in': 'good', 'with-adjustment': 'good', no: 'warn' }

export const AnswerTag = ({ answer }: { answer: Answer }) => (
  <span className="tag" data-shape={answerShape(answer)} data-tone={TONES[answer]}>
    {answerWord(answer)}
  </span>
)
