package working

// A Verdict is the outcome of a [Claim]. None says that anything may be
// built or used: a verdict says which check a number passed.
type Verdict uint8

// The verdicts.
const (
	NotStated         Verdict = iota // nothing to judge, or nothing to judge it by
	Agree                            // within the width
	AgreeConservative                // beyond it, on the side that errs without harm
	Disagree                         // beyond it
	Unsafe                           // a danger was found, whatever the numbers say
)

var verdictWords = []string{"not stated", "agree", "agree, conservative", "disagree", "unsafe"}

// String returns "not stated", "agree", "agree, conservative", "disagree" or
// "unsafe".
func (v Verdict) String() string { return wordFor(verdictWords, uint8(v), "Verdict") }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (v Verdict) MarshalText() ([]byte, error) { return marshalWord(verdictWords, uint8(v), "Verdict") }

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError].
func (v *Verdict) UnmarshalText(text []byte) error {
	i, err := unmarshalWord(verdictWords, text, "a verdict")
	if err == nil {
		*v = Verdict(i)
	}
	return err
}

// A Side is the side on which a wrong claim errs without harm: a fuse stated
// too small blows, one stated too large burns.
type Side uint8

// The sides.
const (
	Neither Side = iota // wrong is wrong
	Higher              // a claim above the computed value does no harm
	Lower               // a claim below it does no harm
)

var sideWords = []string{"neither", "higher", "lower"}

// String returns "neither", "higher" or "lower".
func (s Side) String() string { return wordFor(sideWords, uint8(s), "Side") }

// MarshalText returns what String does; a value that is not defined is a
// [*units.RangeError].
func (s Side) MarshalText() ([]byte, error) { return marshalWord(sideWords, uint8(s), "Side") }

// UnmarshalText reads what MarshalText returns; other text is a
// [*units.ParseError].
func (s *Side) UnmarshalText(text []byte) error {
	i, err := unmarshalWord(sideWords, text, "a side")
	if err == nil {
		*s = Side(i)
	}
	return err
}
