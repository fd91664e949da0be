// Package house has no code: its tests hold the rules of this repository, so
// that no reader has to remember them. Each rule is a function from a tree of
// source files to the places that break it, and is tested twice: on this
// repository, and on small seeded trees that break it in one place, or just
// do not (Test<Rule>Seeds).
//
//   - TestTopLevel: the folders and files at the top are those of the plan,
//     and the ones that everybody looks for are there.
//   - TestImports: the arrows between packages, and which package may use
//     which module. Test helpers stay out of code that is not a test.
//   - TestAPI: what library packages export is what testdata/api says, an
//     identifier a line, so that a change to it is seen and meant.
//     DRAWBAR_UPDATE=1 rewrites it.
//   - TestComments: every package and every exported identifier, fields and
//     methods too, says what it is, and a declaration's comment begins with
//     its name. In a group of constants each has its own comment.
//   - TestProducts: no product and no quotient of two numbers of one quantity,
//     which Go takes for that quantity. Ratios, constants and package units
//     are exempt.
//   - TestConstants: in programs, in the book and in Examples no bare number
//     stands where a quantity belongs, and no conversion changes a quantity.
//   - TestWrongProgramsDoNotCompile: mistakes that the types have to catch are
//     caught, each with the error that says why; one program without a mistake
//     compiles.
//   - TestSheets: every exported type of a library package with a method
//     Working has a test TestSheet<Type> that has unitstest.CheckSheet check
//     such working.
//   - TestFuzzed: every function that returns such a type has a target
//     Fuzz<Function>, every such method that can fail Fuzz<Type><Method>, and
//     some target uses every function named Parse or Parse<Something>.
//   - TestShown: every exported function and type of a library package is shown
//     in an Example whose output is checked: the function is used, the type is
//     named or some value has it. Methods and constants come with their type,
//     interfaces with what satisfies them, MustX with X.
//   - TestState: no function init, no exported variable but sentinel errors, no
//     assignment to a package variable.
//   - TestLengths and TestWords: no Go file above 600 lines (those above 400 are
//     logged); no marks of unfinished work, no test that is passed over, no
//     path of somebody's machine, in any text file.
//   - TestCompiles: what does not compile fails here too, for the other rules
//     would not see all of it.
//
// A test that uses something may do so through functions and variables that
// its package's tests declare.
package house
