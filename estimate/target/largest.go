package target

import (
	"context"
	"errors"
	"fmt"

	"filmbuild/estimate/fault"
)

// What a size came to.
type verdict int

const (
	fitting verdict = iota
	tooLarge
	refused // by the engine: a number left its limits
)

func (s *search) judge(size float64) verdict {
	turn(s.knobs, size)
	switch e := s.try(); {
	case e == nil:
		return refused
	case s.fits(e):
		return fitting
	}
	return tooLarge
}

// largest finds the largest size that fits: an interval from one that does to
// one that does not is found by doubling or halving from the plan, and then
// halved until it is narrower than the tolerance.
func (s *search) largest(ctx context.Context) (float64, error) {
	defer turn(s.knobs, 1)
	fits, over, why := 0.0, 0.0, fitting
	for size := 1.0; ; {
		if err := ctx.Err(); err != nil {
			return 0, err
		}
		v := s.judge(size)
		if v == fitting {
			fits = size
			if over > 0 {
				break
			}
			if size *= 2; size > mostSize {
				return 0, s.fault("there is no largest size: at %.3g times the plan every target still holds. Name a budget or a stock that depends on it", mostSize)
			}
			continue
		}
		switch {
		case v == refused && fits == 0: // the last size that was possible at all is still too large
			return 0, s.fixed(over)
		case fits == 0 && size < 2*leastSize:
			return 0, s.fixed(size)
		}
		over, why = size, v
		if fits > 0 {
			break
		}
		size /= 2
	}
	for over > fits*(1+Tolerance) {
		if err := ctx.Err(); err != nil {
			return 0, err
		}
		middle := (fits + over) / 2
		if v := s.judge(middle); v == fitting {
			fits = middle
		} else {
			over, why = middle, v
		}
	}
	if why == refused {
		return 0, s.refusedAt(over)
	}
	return fits, nil
}

func (s *search) fault(format string, args ...any) error {
	var list fault.List
	list.Addf(s.pointer(), "inconsistent", format, args...)
	return list.Err()
}

func (s *search) pointer() string {
	if s.question.Budget != nil {
		return "/budget"
	}
	return "/stock"
}

// fixed tells that a target is passed by what does not depend on the size.
func (s *search) fixed(least float64) error {
	turn(s.knobs, least)
	e := s.try()
	if e == nil {
		return s.refusedAt(least)
	}
	for _, h := range s.held(e) {
		if h.Takes > h.Most && h.Budget != nil {
			return s.fault("the budget of %s %s is below the fixed costs: with next to nothing painted the job still needs %s, for the smallest packs, set-up times and items", h.Budget, h.Unit, h.Needed)
		} else if h.Takes > h.Most {
			return s.fault("the stock of %s, %.6g %s, does not reach for what does not depend on the size: %.6g %s are needed with next to nothing else painted", h.Target, h.Most, h.Unit, h.Takes, h.Unit)
		}
	}
	return s.fault("nothing fits")
}

// refusedAt tells that the job itself stops being possible before a target is
// reached.
func (s *search) refusedAt(size float64) error {
	var list *fault.Error
	if errors.As(s.refusal, &list) && len(list.Faults) > 0 {
		first := list.Faults[0]
		return s.fault("the targets hold up to %.4g times the plan, where the job is refused: %s, %s", size, first.Pointer, first.Detail)
	}
	return fmt.Errorf("the job is refused at %g times the plan: %w", size, s.refusal)
}
