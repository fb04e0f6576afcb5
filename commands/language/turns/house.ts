/** What is asked of the bot itself, and of what it keeps. */
import type { Turn } from './turn.js';

export const house: readonly Turn[] = [
  {
    said: /^(?:what (?:can|do) you do|how (?:does this|do you) work|who are you|what are you|how do i use (?:this|you)|what is this)\W*$/i,
    means: 'help',
    line: 'what can you do',
    becomes: 'help',
  },
  {
    said: /^what can i (?:change|do|swap|adjust|set|try)(?: (?:at|in|within|over|during|before|with|between) .{1,40})?\W*$/i,
    means: 'box',
    line: 'what can i change at lunch in 30 min',
    becomes: 'box',
  },
  {
    said: /^what(?:'?s| is) the (?:cheapest|quickest|easiest|fastest|simplest|least work) way to (?=\S)/i,
    means: '',
    echo: 'ranked by shift for the work; what has a price shows it',
    line: "what's the cheapest way to loosen it up",
    becomes: 'loosen it up',
  },
  {
    said: /^log (?:an? |my )?(?:runs?|laps?|times?)\b.*$/i,
    means: 'my run time',
    line: 'log a run 45.2',
    becomes: 'my run time',
  },
  {
    said: /^(?:please )?(?:use |switch to |change to |go |in |i want |i use |give me |set )?(?:my )?(?:units? )?(?:to )?(metric|imperial|us|american)(?: units?)?(?: please| pls)?\W*$/i,
    means: (all = '', system) => (/^(?:us|go us|in us)\W*$/i.test(all) ? all : `units ${/metric/i.test(system ?? '') ? 'metric' : 'us'}`),
    line: 'metric please',
    becomes: 'units metric',
  },
  {
    said: /^(?:use (?:an? )?|i use (?:an? )?|with (?:an? )?)?(?:decimal (comma|point)|(comma|point) as (?:the )?decimal(?: mark)?)s?(?: please)?\W*$/i,
    means: (_, one, other) => `units ${(one ?? other)?.toLowerCase()}`,
    line: 'decimal comma',
    becomes: 'units comma',
  },
  {
    said: /^(?:what|which) units? (?:am i|are (?:these|those|you)|do (?:i|you))\b.*$/i,
    means: 'units',
    line: 'what units am i in',
    becomes: 'units',
  },
  {
    said: /^(?:what do you (?:know|have)|tell me|what have you got|what's|whats|info) (?:about|on|for|of) (?:my car |my )?(\S+)\W*$/i,
    means: 'show $1',
    line: 'what do you know about turnip',
    becomes: 'show turnip',
  },
  {
    said: /^what(?:'s| is)?(?: (?:do|dont|don't) you)?(?: (?:not know|still missing|missing|still need|need to know|don't know|dont know|else do you need))+\W*$/i,
    means: 'doubt',
    line: "what's missing",
    becomes: 'doubt',
  },
  {
    said: /^(?:how (?:do|did) you (?:figure|get|know|work (?:that|it) out|come up with)(?: that| this| it| there)?|show (?:me )?(?:the|your) (?:math|maths|work|working|sums)|(?:where|how) (?:does|did) (?:that|this|it) come from|says who|prove it|why(?: is)? that|how so|explain(?: that| it)?)\W*$/i,
    means: 'why',
    line: 'how do you figure that',
    becomes: 'why',
  },
  {
    said: /^(?:what (?:did i change|have i changed|changed|has changed|have i done)|(?:show (?:me )?)?(?:the |my )?(?:last )?changes)(?: lately| last| today| so far)?\W*$/i,
    means: 'history',
    line: 'what did i change',
    becomes: 'history',
  },
];
