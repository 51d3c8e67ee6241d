/** Plain signs of a note name or chord symbol made true ones: `Bb` is B♭, `D/F#` is D/F♯, `A7b9` is A7♭9. */
export function trueSigns(note: string): string {
  return note
    .replace(/(?<=(?:^|\/)[A-G](?:#|b)*)#/g, '♯')
    .replace(/(?<=(?:^|\/)[A-G](?:b|♯)*)b/g, '♭')
    .replace(/#(?=\d)/g, '♯')
    .replace(/b(?=\d)/g, '♭')
}
