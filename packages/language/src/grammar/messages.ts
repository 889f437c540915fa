import { DefaultLexerErrorMessageProvider, LangiumParserErrorMessageProvider } from 'langium';

export class CoverParserMessages extends LangiumParserErrorMessageProvider {}
export class CoverLexerMessages extends DefaultLexerErrorMessageProvider {}
