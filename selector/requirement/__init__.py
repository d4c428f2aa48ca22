"""What the user asks: part, safety, zones, loads, limits, workshop, priorities."""

from selector.requirement.read import read_requirement, requirement_from
from selector.requirement.whole import Requirement

__all__ = ["Requirement", "read_requirement", "requirement_from"]
