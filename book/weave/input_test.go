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
		{"metal", "-40 °F", "| -40 °C (in the chapter: 68 °F) |"},
		{"resistance", "20 mohm", "| 0.02 Ω (in the chapter: 0.1 ohm) |"},
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
		{"lamb", "current", weave.UnknownError{Kind: "example", Name: "lamb"}, `no example "lamb"; there are lamp`},
		{"small", "current", weave.UnknownError{Kind: "example", Name: "small"}, `no example "small"; there are lamp`},
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
	texts := weave.Input{Name: "current", Label: "anything", Default: " 5 ", High: ""}
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
