// Stops a plain `npm install`, which would leave a half-working workspace: npm does not read pnpm's lockfile.
if (!/^pnpm\//.test(process.env.npm_config_user_agent ?? '')) {
  console.error('This workspace is installed with pnpm. Run `npm run demo` or `npm test`: both install what they need.')
  process.exit(1)
}
