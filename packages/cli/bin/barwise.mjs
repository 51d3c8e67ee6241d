#!/usr/bin/env node
// A file that is there before anything is compiled, so that an install can link the command.
import '../dist/main.js'
