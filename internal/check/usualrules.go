package check

import (
	"fmt"

	"github.com/goccy/go-yaml"
)

// usualSource is what a limit says that names no other.
const usualSource = "common practice, no source"

// readUsual reads the rules that ship.
func readUsual(data []byte) (Rules, error) {
	var file struct {
		Rules []struct {
			Name     string        `yaml:"name"`
			Fault    int           `yaml:"fault"`
			Severity Severity      `yaml:"severity"`
			Off      bool          `yaml:"off"`
			Times    bool          `yaml:"times"`
			Evidence string        `yaml:"evidence"`
			Question string        `yaml:"question"`
			Answer   string        `yaml:"answer"`
			Limits   yaml.MapSlice `yaml:"limits"`
		} `yaml:"rules"`
	}
	if err := yaml.UnmarshalWithOptions(data, &file, yaml.Strict()); err != nil {
		return Rules{}, err
	}
	var rules Rules
	for _, r := range file.Rules {
		rule := Rule{Name: r.Name, Fault: r.Fault, Severity: r.Severity, On: !r.Off, Times: r.Times, Evidence: r.Evidence, Question: r.Question, Answer: r.Answer}
		rule.Family, rule.test = testOf(r.Name)
		if rule.test == nil {
			return Rules{}, fmt.Errorf("no test is called %q", r.Name)
		}
		for _, item := range r.Limits {
			l, err := usualLimit(item)
			if err != nil {
				return Rules{}, fmt.Errorf("%s: %w", r.Name, err)
			}
			rule.Limits = append(rule.Limits, l)
		}
		rules.list = append(rules.list, rule)
	}
	return rules, nil
}

func usualLimit(item yaml.MapItem) (Limit, error) {
	fields, ok := item.Value.(map[string]any)
	if !ok {
		return Limit{}, fmt.Errorf("limit %v is no table", item.Key)
	}
	value, number := fields["value"].(uint64)
	unit, worded := fields["unit"].(string)
	if !number || !worded {
		return Limit{}, fmt.Errorf("limit %v has no value or no unit", item.Key)
	}
	l := Limit{Name: fmt.Sprint(item.Key), Value: int(value), Unit: unit, Source: usualSource}
	if source, given := fields["source"].(string); given {
		l.Source = source
	}
	return l, nil
}
