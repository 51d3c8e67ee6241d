import type { PlayData } from './play-data.ts'
import { openPlayer } from './player.ts'

// The page holds what can be played as JSON; without it, or in a browser that cannot make sound, the page stays as it is.
const held = document.getElementById('play-data')?.textContent
if (held && 'AudioContext' in window) openPlayer(JSON.parse(held) as PlayData)
