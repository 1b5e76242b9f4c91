/**
 * The other codes of ONIX List 17 (as the list stands at issue 68) beside those offered first, with plain labels of
 * ours. `code label`, parted by a bar, so that the whole list is read at a glance.
 */
const LIST = `
A02 Co-writer, named second|A03 Screenplay|A04 Libretto|A05 Lyrics|A06 Composer|A07 Artist|A08 Photographer|A09 Creator
A10 Idea|A11 Designer|A14 Text to pictures|A16 Prologue|A17 Summary|A18 Supplement|A21 Commentary|A22 Epilogue
A25 Footnotes|A26 Memoir|A27 Experiments|A28 Person spoken through|A29 Introduction and notes|A30 Software
A31 Book and lyrics of a musical|A32 Contributor of a part|A33 Appendix|A35 Drawings|A37 Preliminary work
A38 Author of the original|A40 Inking or colouring|A41 Paper engineering|A42 Continued by|A43 Interviewer
A44 Person interviewed|A45 Comic script|A46 Inker of a comic|A47 Colourist of a comic|A48 Letterer|A49 Inker of the cover
A50 Colourist of the cover|A51 Research|A52 Design of the characters|A56 Graphic design of the cover
A99 Another main creator|B03 Reteller|B07 Teller of the tale|B08 Translator with commentary|B09 Editor of the series
B10 Editor and translator|B11 Editor in chief|B12 Guest editor|B13 Editor of the volume|B14 Member of the editorial board
B15 Editorial coordinator|B16 Managing editor|B17 Founder|B18 Preparer for publication|B19 Associate editor
B20 Consulting editor|B21 General editor|B22 Dramatiser|B23 General rapporteur|B24 Literary editor|B25 Arranger of music
B26 Technical editor|B27 Supervisor of a thesis|B28 Examiner of a thesis|B29 Scientific editor|B30 Historical adviser
B31 Editor of the original|B32 Reviser of the translation|B33 Transcriber|B34 Sensitivity reader|B35 Picture descriptions
B36 Moderniser of the text|B99 Another adapter|C02 Selector|C03 Selector of pictures and other matter|C04 Curator
C99 Another compiler|D01 Producer|D02 Director|D03 Conductor|D04 Choreographer|D99 Another director|E01 Actor|E02 Dancer
E04 Commentator|E05 Singer|E06 Soloist on an instrument|E08 Orchestra, band or ensemble|E09 Speaker|E10 Presenter
E11 Reader of the introduction|E99 Another performer|F01 Camera or photography|F02 Editor of film or video
F99 Another maker of a recording|Z01 Assistant|Z02 Person honoured|Z03 Jurisdiction that enacts|Z04 Peer reviewer
Z05 Completer after a death|Z06 In association with|Z98 Various roles
`;

/** Roles that are rarely needed, in the order of their codes. */
export const MORE_ROLES: readonly { code: string; name: string }[] = LIST.trim()
  .split(/[|\n]/)
  .map((entry) => ({ code: entry.slice(0, 3), name: entry.slice(4) }));
