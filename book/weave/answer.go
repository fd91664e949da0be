package weave

import (
	"example.com/drawbar/units"
	"example.com/drawbar/units/working"
)

// An Answer is what a solve function returns.
type Answer struct {
	Text     string            // Markdown sentences; {{value}} is replaced by one of Values
	Values   []Value           // each used in Text, or by a placeholder elsewhere in the chapter
	Working  *working.Sheet    // optional: how the numbers came about
	Findings []working.Finding // optional: what to heed
	Checks   []Row             // optional: published results for the default inputs; left out once an input is changed
	Figure   Figure            // optional: its file is named after Figure.Name
}

// A Row compares one computed value with what is printed in a source: Ours
// with Printed or, where the result is no quantity, OursText with
// PrintedText.
type Row struct {
	What    string         // plain text
	Ours    units.Value    // as computed
	Printed units.Printed  // as printed; Ours is shown in its unit
	Source  working.Source // where it is printed

	OursText, PrintedText string // instead of Ours and Printed, such as "8 AWG"

	// Within is the difference allowed where the two do not agree to the
	// printed digits: a ratio ("1.5 %", of the printed number) or a number
	// in the printed unit ("0.02 V"). Why is the reason for it, from the
	// precision of the source itself; plain text.
	Within, Why string

	// Differs is the reason why print and computation differ, plain text.
	// It must be given if they do, and must not if they agree.
	Differs string
}
