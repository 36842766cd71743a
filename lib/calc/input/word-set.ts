/** Sentences come in US words unless the input asks for UK ones. */
import { z } from 'zod'

export const wordSet = z
  .enum(['US', 'UK'])
  .default('US')
  .describe('Words of the sentences: plate and tube, or anode and valve.')
