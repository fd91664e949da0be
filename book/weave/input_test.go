package weave_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/drawbar/book/weave"
	"example.com/drawbar/units"
)

func TestSettings(t *testing.T) {
	tests := []struct {
		input, value string
		want         string // in the table of what is given
	}{
		// another unit, in any spelling
		{"current", "6000 mA", "| 6 A (in the chapter: 5 A) |"},
		{"current", "+6A", "| 6 A (in the chapter: 5 A) |"},
		{"metal", "212 °F", ""},
		{"metal", "-40 °F", "| -40 °C (in the chapter: 20 °C) |"},
		{"resistance", "20 mohm", "| 0.02 Ω (in the chapter: 0.1 Ω) |"},
		// both ends are in the range, and noise does not take them out
		{"current", "100 mA", "| 0.1 A "},
		{"current", "20.000000000001 A", "| 20 A "},
		{"current", "20.001 A", ""},
		{"current", "99 mA", ""},
		{"metal", "90 °C", "| 90 °C "},
		{"metal", "-40.1 °C", ""},
		// no number, no unit, another quantity, not finite
		{"current", "", ""},
		{"current", "ten", ""},
		{"current", "10", ""},
		{"current", "10 V", ""},
		{"current", "NaN A", ""},
		{"current", "1e999 A", ""},
		{"metal", "-300 °C", ""},
		// counts
		{"lamps", " 4 ", "| 4 (in the chapter: 1) |"},
		{"lamps", "5", ""},
		{"lamps", "0", ""},
		{"lamps", "2.5", ""},
		{"lamps", "two", ""},
		// choices
		{"cord", "Round Cord", "| round cord (in the chapter: flat cord) |"},
		{"cord", "roundcord", "| round cord (in the chapter: flat cord) |"},
		{"cord", "cord", ""},
		{"cord", "", ""},
	}
	for _, tt := range tests {
		w, err := weave.WeaveExample(sample(), "lamp", []weave.Setting{{Input: tt.input, Value: tt.value}})
		switch {
		case tt.want != "" && err != nil:
			t.Errorf("%s = %q: %v", tt.input, tt.value, err)
		case tt.want != "":
			if !strings.Contains(w.Markdown(), tt.want) {
				t.Errorf("%s = %q: want %s in\n%s", tt.input, tt.value, tt.want, w.Markdown())
			}
		default:
			checkRefused(t, err, tt.input, tt.value)
		}
	}
}

// A value is another if it reads otherwise, however it is written.
func TestSameValue(t *testing.T) {
	for _, s := range []weave.Setting{
		{Input: "current", Value: "5000 mA"},
		{Input: "current", Value: "5.0A"},
		{Input: "current", Value: "4.999999999999999 A"},
		{Input: "metal", Value: "20 °C"}, // 68 °F in the chapter
		{Input: "metal", Value: "293.15 K"},
		{Input: "resistance", Value: "100 mohm"},
		{Input: "lamps", Value: " 01 "},
		{Input: "cord", Value: "Flat  Cord"},
	} {
		w, err := weave.WeaveExample(sample(), "lamp", []weave.Setting{s})
		if err != nil {
			t.Errorf("%s = %q: %v", s.Input, s.Value, err)
			continue
		}
		if text := w.Text(); strings.Contains(text, "in the chapter") || !strings.Contains(text, "Compared with print") {
			t.Errorf("%s = %q is told as a change:\n%s", s.Input, s.Value, text)
		}
	}
}

// A text is compared as it is read: 2.50 and 2.5 are one number.
func TestSameText(t *testing.T) {
	size := weave.Input{Name: "size", Label: "size", Default: "2.5"}
	c := chapter(with(solveSize, size))
	for value, changed := range map[string]bool{"2.5": false, " 2.50 ": false, "2.51": true} {
		w, err := weave.WeaveExample(c, "it", []weave.Setting{{Input: "size", Value: value}})
		if err != nil {
			t.Errorf("%q: %v", value, err)
			continue
		}
		if got := strings.Contains(w.Text(), "(in the chapter: 2.5)"); got != changed {
			t.Errorf("%q is told as a change: %v, want %v", value, got, changed)
		}
	}
}

// checkRefused demands "a typed error naming input, value and range".
func checkRefused(t *testing.T, err error, input, value string) {
	t.Helper()
	var refused *weave.InputError
	if !errors.As(err, &refused) {
		t.Errorf("%s = %q: %v, want an InputError", input, value, err)
		return
	}
	allowed := map[string]string{"current": "0.1 A to 20 A", "metal": "-40 °C to 90 °C",
		"lamps": "1 to 4", "cord": "flat cord, round cord"}[input]
	if refused.Input != input || refused.Value != value || refused.Allowed != allowed || refused.Err == nil {
		t.Errorf("%s = %q: %#v, want the range %s", input, value, refused, allowed)
	}
	if want := input + " = " + value + ", want " + allowed; !strings.Contains(err.Error(), want) {
		t.Errorf("%v, want %q in it", err, want)
	}
}

// What cannot be read is told with the reason.
func TestRefusedReason(t *testing.T) {
	const lengths = "want one of m, mm, cm, km, ft, in, mil, mi"
	length := weave.Input{Name: "length", Label: "length", Default: "20 ft", Unit: "ft", Low: "1 ft", High: "200 ft"}
	c := chapter(reading(length, func(in *weave.Inputs) { _ = weave.In[units.Length](in, "length") }))
	for value, want := range map[string]string{
		"25":     "length = 25, want 1 ft to 200 ft: no unit; " + lengths,
		"25 kg":  `length = 25 kg, want 1 ft to 200 ft: unknown unit "kg"; ` + lengths,
		"":       "length = , want 1 ft to 200 ft: empty; want a number and a unit: ",
		"long":   "length = long, want 1 ft to 200 ft: ",
		"201 ft": "length = 201 ft, want 1 ft to 200 ft",
	} {
		_, err := weave.WeaveExample(c, "it", []weave.Setting{{Input: "length", Value: value}})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("length = %q: %v, want %q in it", value, err, want)
		}
		if err != nil && value == "201 ft" && !strings.HasSuffix(err.Error(), want) {
			t.Errorf("length = %q: %v, want nothing behind %q", value, err, want)
		}
	}
	for value, want := range map[string]string{
		"two":                  "lamps = two, want 1 to 4: not a whole number",
		"2.5":                  "lamps = 2.5, want 1 to 4: not a whole number",
		"99999999999999999999": "lamps = 99999999999999999999, want 1 to 4",
	} {
		_, err := weave.WeaveExample(sample(), "lamp", []weave.Setting{{Input: "lamps", Value: value}})
		if err == nil || !strings.HasSuffix(err.Error(), want) {
			t.Errorf("lamps = %q: %v, want %q at its end", value, err, want)
		}
	}
}

func TestRefusedMatches(t *testing.T) {
	for value, want := range map[string]error{"30 A": units.ErrRange, "30 V": units.ErrSyntax} {
		_, err := weave.WeaveExample(sample(), "lamp", []weave.Setting{{Input: "current", Value: value}})
		if !errors.Is(err, want) {
			t.Errorf("current = %s: %v, want one that matches %v", value, err, want)
		}
	}
}

func TestUnknownNames(t *testing.T) {
	tests := []struct {
		example, input string
		want           weave.UnknownError
		message        string
	}{
		{"lamb", "current", weave.UnknownError{Kind: "example", Name: "lamb"}, `no example "lamb"; there are lamp, two, none`},
		{"small", "current", weave.UnknownError{Kind: "example", Name: "small"}, `no example "small"; there are lamp, two, none`},
		{"lamp", "curent", weave.UnknownError{Kind: "input", Name: "curent"},
			`no input "curent"; there are current, source, resistance, metal, lamps, cord`},
	}
	for _, tt := range tests {
		_, err := weave.WeaveExample(sample(), tt.example, []weave.Setting{{Input: tt.input, Value: "5 A"}})
		var unknown *weave.UnknownError
		if !errors.As(err, &unknown) || unknown.Kind != tt.want.Kind || unknown.Name != tt.want.Name {
			t.Errorf("%s, %s: %v, want %+v", tt.example, tt.input, err, tt.want)
			continue
		}
		if unknown.Error() != tt.message {
			t.Errorf("%v, want %s", unknown, tt.message)
		}
	}
}

// What a text may be is not listed.
func TestAnyText(t *testing.T) {
	c := chapter(with(solveText, weave.Input{Name: "anything", Label: "anything", Default: "wet"}))
	w, err := weave.WeaveExample(c, "it", []weave.Setting{{Input: "anything", Value: " dry "}})
	if err != nil {
		t.Fatal(err)
	}
	if want := "| anything | dry (in the chapter: wet) | any | anything |"; !strings.Contains(w.Markdown(), want) {
		t.Errorf("want %s in\n%s", want, w.Markdown())
	}
}

// A text that is no choice is judged by the function that reads it, whose
// error says what is wrong.
func TestParsedText(t *testing.T) {
	texts := weave.Input{Name: "current", Label: "anything", Default: " 6 "}
	wrong := errors.New("an odd number")
	for text, refuse := range map[string]error{"4": nil, "5": wrong, "  ": units.ErrSyntax} {
		p := texts
		got := "not read"
		w := reading(p, func(in *weave.Inputs) {
			got = weave.Parsed(in, "current", func(s string) (string, error) {
				if s == "5" {
					return "", wrong
				}
				return s, nil
			})
		})
		_, err := weave.WeaveExample(chapter(w), "it", []weave.Setting{{Input: "current", Value: text}})
		var refused *weave.InputError
		switch {
		case refuse == nil:
			if got != text {
				t.Errorf("read %q, want %q", got, text)
			}
		case !errors.Is(err, refuse) || !errors.As(err, &refused) || got != "":
			t.Errorf("%q: %v, %q; want %v", text, err, got, refuse)
		case !strings.Contains(refused.Error(), "current = "+text+": "+refused.Err.Error()):
			t.Errorf("%q: %v", text, refused)
		}
	}
}
