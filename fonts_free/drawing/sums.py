"""Whole and fractional sums in the stroke files: `w-v`, `(x+h)//2`, `min(rx,8)`; nothing else is run."""

from __future__ import annotations

import ast
import math
from collections.abc import Mapping
from fractions import Fraction


def near(value: Fraction) -> Fraction:
    """The nearest whole number, halves upward."""
    return Fraction(math.floor(value + Fraction(1, 2)))


def _run(node: ast.expr, names: Mapping[str, Fraction]) -> Fraction:
    match node:
        case ast.Constant(value=int() | float() as number):
            return Fraction(str(number))
        case ast.Name(id=name) if name in names:
            return names[name]
        case ast.UnaryOp(op=ast.USub(), operand=operand):
            return -_run(operand, names)
        case ast.BinOp(left=first, op=op, right=second):
            a, b = _run(first, names), _run(second, names)
            match op:
                case ast.Add():
                    return a + b
                case ast.Sub():
                    return a - b
                case ast.Mult():
                    return a * b
                case ast.Div():
                    return a / b
                case ast.FloorDiv():
                    return Fraction(a // b)
        case ast.Call(func=ast.Name(id=called), args=args, keywords=[]):
            values = [_run(arg, names) for arg in args]
            match called, len(values):
                case "near", 1:
                    return near(values[0])
                case "min", _:
                    return min(values)
                case "max", _:
                    return max(values)
    raise ValueError(f"not a sum of known names: {ast.unparse(node)}")


def total(text: str, names: Mapping[str, Fraction]) -> Fraction:
    """The value of a sum such as `(c+h)//2`."""
    return _run(ast.parse(text, mode="eval").body, names)
