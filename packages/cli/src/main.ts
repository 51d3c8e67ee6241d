#!/usr/bin/env node
import { runProgram } from './program.ts'
import { processWorld } from './terminal/process-world.ts'

process.exitCode = await runProgram(process.argv.slice(2), processWorld())
