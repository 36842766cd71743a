/** `npm run -s calc -- NAME [FILE|-]`. Exit 0 with the answer, 2 with the fault; anything else is a defect. */
import { runCalc } from './run-calc'

// A reader that has seen enough ("| head") is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error
})

async function readStandardInput(): Promise<string> {
  let text = ''
  process.stdin.setEncoding('utf8')
  for await (const chunk of process.stdin) text += chunk
  return text
}

const { code, stdout, stderr } = await runCalc(process.argv.slice(2), {
  folder: process.env.INIT_CWD ?? process.cwd(),
  terminal: process.stdin.isTTY === true,
  readStandardInput,
})
process.stdout.write(stdout)
process.stderr.write(stderr)
process.exitCode = code
